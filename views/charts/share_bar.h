// The parts of a whole as one bar, largest first, each named with its share below it. Colours only
// tell neighbours apart; the words say what they are.
#pragma once

#include "views/theme/theme.h"

#include <QVector>
#include <QWidget>

namespace rickyard::views {

class ShareBar : public QWidget
{
    Q_OBJECT

public:
    struct Part {
        QString label; // "Shell"
        QString text;  // "71 %"
        double share = 0;
    };

    // name says what the whole is ("Where the heat goes").
    explicit ShareBar(const QString &name, QWidget *parent = nullptr);
    void setParts(const QVector<Part> &parts);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    [[nodiscard]] QVector<double> wordPlaces(const QFontMetrics &metrics) const;

    QString m_name;
    QVector<Part> m_parts;
};

} // namespace rickyard::views
