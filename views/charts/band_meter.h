// What was used against what was to be expected by now: a scale with the expected range as a band,
// its middle as a line and the present as a mark, and all of it in words.
#pragma once

#include "views/theme/theme.h"

#include <QWidget>

namespace rickyard::views {

class BandMeter : public QWidget
{
    Q_OBJECT

public:
    explicit BandMeter(QWidget *parent = nullptr);

    // All in one unit; the texts are written above the scale, left and right.
    void setValues(double now, double low, double middle, double high, const QString &nowText,
                   const QString &bandText);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    double m_now = 0.0;
    double m_low = 0.0;
    double m_middle = 0.0;
    double m_high = 0.0;
    QString m_nowText;
    QString m_bandText;
};

} // namespace rickyard::views
