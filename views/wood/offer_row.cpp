#include "views/wood/offer_row.h"

#include "models/domain/answers/wording.h"
#include "models/domain/wood/moisture.h"
#include "models/domain/wood/offer_words.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/numeral.h"
#include "views/widgets/text_label.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using domain::OfferLine;
using domain::Wording;

namespace {

TextLabel *offerText(const QString &text, TextStyle style, Role role)
{
    auto *label = new TextLabel(text, style, role);
    label->setWordWrap(true);
    return label;
}

QVBoxLayout *columnIn(QWidget *holder)
{
    auto *column = new QVBoxLayout(holder);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(holder).space(1));
    // The columns of all rows share the width by their stretch alone, so that they line up.
    holder->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    return column;
}

QString moistureLine(const OfferLine &line, const Wording &wording)
{
    const QString expected = domain::bothBases(line.expected, wording);
    if (line.moistureAssumed)
        return OfferRow::tr("Nothing promised: taken as green, %1").arg(expected);
    const QString promised = domain::bothBases(*line.promised, wording);
    if (line.promised == line.expected)
        return OfferRow::tr("Promised and expected %1").arg(expected);
    return OfferRow::tr("Promised %1, expected %2").arg(promised, expected);
}

QString rangeWords(const OfferLine &line, const Wording &wording)
{
    return rangeText(domain::moneyWords(line.low, wording), domain::moneyWords(line.high, wording));
}

} // namespace

OfferScale scaleOf(const domain::OfferComparison &comparison)
{
    OfferScale scale;
    bool any = false;
    for (const OfferLine &line : comparison.lines) {
        if (!line.priced())
            continue;
        scale.least = any ? std::min(scale.least, line.low) : line.low;
        scale.most = any ? std::max(scale.most, line.high) : line.high;
        if (!any)
            scale.best = line.centsPerMillionBtu;
        any = true;
    }
    const double margin = std::max(0.04 * (scale.most - scale.least), 1.0);
    scale.least = std::max(0.0, scale.least - margin);
    scale.most += margin;
    return scale;
}

IntervalBar::IntervalBar(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void IntervalBar::setInterval(const OfferScale &scale, double low, double middle, double high,
                              bool first, const QString &words)
{
    m_scale = scale;
    m_low = low;
    m_middle = middle;
    m_high = high;
    m_first = first;
    m_words = words;
    setAccessibleName(words);
    updateGeometry();
    update();
}

double IntervalBar::place(double cents) const
{
    const double edge = theme(this).px(6); // half a dot stays inside
    const double part = (cents - m_scale.least) / std::max(1e-9, m_scale.most - m_scale.least);
    return edge + std::clamp(part, 0.0, 1.0) * (width() - 2 * edge);
}

QSize IntervalBar::sizeHint() const
{
    const Theme &look = theme(this);
    const QFontMetrics metrics(look.font(TextStyle::Caption));
    return {std::max(look.px(200), metrics.horizontalAdvance(m_words) + look.space(2)),
            look.px(22) + metrics.height()};
}

QSize IntervalBar::minimumSizeHint() const
{
    const Theme &look = theme(this);
    const QFontMetrics metrics(look.font(TextStyle::Caption));
    return {metrics.horizontalAdvance(m_words) + look.space(1), sizeHint().height()};
}

void IntervalBar::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        updateGeometry();
    QWidget::changeEvent(event);
}

void IntervalBar::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double thick = look.px(10);
    const double middle = look.px(11);
    const double left = place(m_low);
    const double right = std::max(place(m_high), left + 1);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.color(Role::Hairline));
    painter.drawRect(QRectF(0, middle - look.px(1) / 2.0, width(), look.px(1)));
    // The price of the cheapest runs through all rows.
    painter.setBrush(look.color(Role::InkMuted));
    painter.drawRect(QRectF(place(m_scale.best) - look.px(1) / 2.0, 0, look.px(1), look.px(22)));
    const QColor ink = look.color(m_first ? Role::Accent : Role::InkMuted);
    painter.setPen(QPen(ink, look.px(1.5)));
    painter.setBrush(m_first ? look.soft(Role::Accent) : look.color(Role::Field));
    painter.drawRoundedRect(QRectF(left, middle - thick / 2, right - left, thick), thick / 2,
                            thick / 2);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawEllipse(QPointF(place(m_middle), middle), look.px(5), look.px(5));
    painter.setFont(look.font(TextStyle::Caption));
    painter.setPen(look.color(Role::InkMuted));
    const double text = painter.fontMetrics().horizontalAdvance(m_words) + 2;
    const double x = std::clamp((left + right - text) / 2, 0.0, std::max(0.0, width() - text));
    painter.drawText(QRectF(x, look.px(22), text, painter.fontMetrics().height()),
                     Qt::AlignLeft | Qt::AlignVCenter, m_words);
}

OfferRow::OfferRow(const OfferLine &line, const OfferScale &scale, bool first,
                   const Wording &wording, QWidget *parent)
    : QAbstractButton(parent), m_offer(line.offer)
{
    const Theme &look = theme(this);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setBackgroundRole(QPalette::Window); // else the labels would take the ink of a button
    setCursor(Qt::PointingHandCursor);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(look.space(3), look.space(3), look.space(3), look.space(3));
    row->setSpacing(look.space(5));
    row->addWidget(buildWords(line, wording), 9);
    row->addWidget(buildPrice(line, scale, first, wording), 6);
    row->addWidget(buildFigures(line, wording), 5);
    setAccessibleName(tr("%1, %2, 80 in 100 tries lie within %3, %4. %5. %6")
                          .arg(domain::offerName(line),
                               domain::heatPriceWords(line.centsPerMillionBtu, wording),
                               rangeWords(line, wording), domain::cheapestWords(line.cheapest),
                               moistureLine(line, wording), line.recordWords));
    setAccessibleDescription(tr("Opens the offer"));
}

QWidget *OfferRow::buildWords(const OfferLine &line, const Wording &wording)
{
    auto *holder = new QWidget;
    auto *column = columnIn(holder);
    column->addWidget(offerText(line.supplier, TextStyle::BodyStrong, Role::Ink));
    column->addWidget(offerText(tr("%1 of %2").arg(line.amount, line.wood.toLower()),
                                TextStyle::Body, Role::Ink));
    column->addWidget(offerText(moistureLine(line, wording), TextStyle::Caption, Role::InkMuted));
    column->addWidget(offerText(line.recordWords, TextStyle::Caption, Role::InkMuted));
    if (!line.notes.isEmpty())
        column->addWidget(
            offerText(tr("Taken for granted: %1").arg(line.notes.join(QStringLiteral("; "))),
                      TextStyle::Caption, Role::InkMuted));
    column->addStretch(1);
    return holder;
}

QWidget *OfferRow::buildPrice(const OfferLine &line, const OfferScale &scale, bool first,
                              const Wording &wording)
{
    auto *holder = new QWidget;
    auto *column = columnIn(holder);
    auto *price = new Numeral;
    price->setValue(domain::moneyWords(line.centsPerMillionBtu, wording), QString());
    price->setCaption(tr("a million Btu net"));
    if (first)
        price->setRole(Role::Accent);
    column->addWidget(price);
    auto *bar = new IntervalBar;
    bar->setInterval(scale, line.low, line.centsPerMillionBtu, line.high, first,
                     tr("%1 in 80 of 100 tries").arg(rangeWords(line, wording)));
    column->addWidget(bar);
    column->addStretch(1);
    return holder;
}

QWidget *OfferRow::buildFigures(const OfferLine &line, const Wording &wording)
{
    auto *holder = new QWidget;
    auto *column = columnIn(holder);
    QString share = domain::cheapestWords(line.cheapest);
    share[0] = share.at(0).toUpper();
    column->addWidget(offerText(share, TextStyle::BodyStrong, Role::Ink));
    QStringList prices;
    prices << tr("%1 in all, with delivery").arg(domain::moneyWords(line.cents, wording));
    if (line.centsPerCord)
        prices << (line.stackedDerived ? tr("about %1 a cord, by its weight") : tr("%1 a cord"))
                      .arg(domain::moneyWords(*line.centsPerCord, wording));
    prices << tr("%1 a dry pound").arg(domain::moneyWords(line.centsPerDryPound, wording, 3));
    if (line.centsPerCook)
        prices << tr("%1 a typical cook").arg(domain::moneyWords(*line.centsPerCook, wording));
    for (const QString &price : prices)
        column->addWidget(offerText(price, TextStyle::Caption, Role::InkMuted));
    column->addStretch(1);
    return holder;
}

void OfferRow::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(rect()).adjusted(1, 1, -1, -1);
    if (underMouse() || isDown()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.color(Role::Hover));
        painter.drawRoundedRect(box, look.radius(), look.radius());
    }
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
        painter.drawRoundedRect(box, look.radius(), look.radius());
    }
}

void OfferRow::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

} // namespace rickyard::views
