// One offer of a comparison: who asks what for how much wood, the price of its heat with the 80 %
// interval as a bar on the scale of all offers, and how often it is the cheapest.
#pragma once

#include "models/domain/wood/offers.h"

#include <QAbstractButton>

namespace rickyard::views {

// From cents to cents a million Btu, with the price of the cheapest offer.
struct OfferScale {
    double least = 0;
    double most = 1;
    double best = 0;
};
OfferScale scaleOf(const domain::OfferComparison &comparison);

// The interval of one price; the figure in use is a dot, the cheapest offer a thin upright line.
class IntervalBar : public QWidget
{
    Q_OBJECT

public:
    explicit IntervalBar(QWidget *parent = nullptr);

    void setInterval(const OfferScale &scale, double low, double middle, double high, bool first,
                     const QString &words);
    [[nodiscard]] QString words() const { return m_words; }
    // Where a price stands, in pixels from the left.
    [[nodiscard]] double place(double cents) const;

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    OfferScale m_scale;
    double m_low = 0;
    double m_middle = 0;
    double m_high = 0;
    bool m_first = false;
    QString m_words;
};

// Opens its offer when it is clicked, or by Space and Enter.
class OfferRow : public QAbstractButton
{
    Q_OBJECT

public:
    OfferRow(const domain::OfferLine &line, const OfferScale &scale, bool first,
             const domain::Wording &wording, QWidget *parent = nullptr);

    [[nodiscard]] domain::RecordId offer() const { return m_offer; }
    [[nodiscard]] QSize sizeHint() const override { return QWidget::sizeHint(); }

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    QWidget *buildWords(const domain::OfferLine &line, const domain::Wording &wording);
    QWidget *buildPrice(const domain::OfferLine &line, const OfferScale &scale, bool first,
                        const domain::Wording &wording);
    QWidget *buildFigures(const domain::OfferLine &line, const domain::Wording &wording);

    domain::RecordId m_offer;
};

} // namespace rickyard::views
