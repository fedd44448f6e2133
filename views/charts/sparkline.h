// A very small chart beside a sentence: a line, its band, a limit, and the last point marked.
// Not interactive; its meaning is in its accessible description.
#pragma once

#include "views/theme/theme.h"

#include <QVector>
#include <QWidget>

#include <optional>

namespace rickyard::views {

class Sparkline : public QWidget
{
    Q_OBJECT

public:
    // what says what the line is ("Oak Pit, last 12 cooks").
    explicit Sparkline(const QString &what, QWidget *parent = nullptr);

    // Values at equal distances. NaN is a gap.
    void setValues(const QVector<double> &values);
    // As many low and high values as there are points; empty for none.
    void setBand(const QVector<double> &low, const QVector<double> &high);
    void setLimit(std::optional<double> limit);
    // Values from this index on are expected, not measured: drawn lighter.
    void setFutureFrom(int index);
    void setRole(Role line, Role lastPoint);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    struct Scale;
    Scale scaleFor() const;
    void describe();

    QString what_;
    QVector<double> values_;
    QVector<double> low_;
    QVector<double> high_;
    std::optional<double> limit_;
    int futureFrom_ = -1;
    Role line_ = Role::ChartA;
    Role last_ = Role::Accent;
};

} // namespace rickyard::views
