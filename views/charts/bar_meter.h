// What is there against what is needed: a bar, a mark at the need, and both in words.
#pragma once

#include "views/theme/theme.h"

#include <QWidget>

namespace rickyard::views {

class BarMeter : public QWidget
{
    Q_OBJECT

public:
    explicit BarMeter(QWidget *parent = nullptr);

    // have and need share one unit; the texts are what is written ("1.4 cords on hand").
    // NaN for have draws no bar.
    void setValues(double have, double need, const QString &haveText, const QString &needText);
    // Colour of the bar; usually Accent, Act when short.
    void setRole(Role role);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    double have_ = 0.0;
    double need_ = 0.0;
    QString haveText_;
    QString needText_;
    Role role_ = Role::Accent;
};

} // namespace rickyard::views
