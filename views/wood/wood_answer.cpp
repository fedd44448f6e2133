#include "views/wood/wood_answer.h"

#include "models/items/wording.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/numeral.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/text_label.h"
#include "views/wood/fan_chart.h"
#include "views/wood/wood_words.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::Standing;

namespace {

Role roleOf(Standing standing)
{
    switch (standing) {
    case Standing::Good:
        return Role::Good;
    case Standing::Watch:
        return Role::Watch;
    case Standing::Act:
        return Role::Act;
    case Standing::Unknown:
        break;
    }
    return Role::Ink;
}

} // namespace

WoodAnswerPanel::WoodAnswerPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_ready(new Numeral), m_waiting(new Numeral),
      m_order(new Numeral), m_sentence(new SentenceLabel),
      m_why(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted)),
      m_chart(new FanChart(FanChart::Size::Brief))
{
    const Theme &look = theme(this);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(6));
    auto *words = new QVBoxLayout;
    words->setSpacing(look.space(3));
    auto *numerals = new QWidget;
    auto *flow = new FlowLayout(numerals);
    flow->setContentsMargins(0, 0, 0, 0);
    flow->setSpacingSteps(6, 2);
    m_ready->setTextStyle(TextStyle::NumeralHuge);
    words->addWidget(m_ready);
    flow->addWidget(m_waiting);
    flow->addWidget(m_order);
    words->addWidget(numerals);
    m_sentence->setStyles(TextStyle::Body, TextStyle::BodyStrong);
    words->addWidget(m_sentence);
    m_why->setWordWrap(true);
    words->addWidget(m_why);
    words->addStretch(1);
    row->addLayout(words, 3);
    row->addWidget(m_chart, 2);
}

void WoodAnswerPanel::refresh(const domain::Stock &stock)
{
    showReady(stock);
    showOrder();
}

void WoodAnswerPanel::showReady(const domain::Stock &stock)
{
    const bool metric = m_context.books().yard().metric;
    const Amount ready = heatAmount(stock.readyHeat, metric);
    m_ready->setValue(ready.value, ready.unit);
    m_ready->setCaption(
        tr("dry and ready · %1").arg(stackedAmount(stock.readyStacked, metric).text()));
    m_readyText = ready.text();
    const Amount waiting = heatAmount(stock.waitingHeat, metric);
    m_waiting->setValue(waiting.value, waiting.unit);
    m_waiting->setCaption(tr("waiting: wet, not read or on hold"));
}

void WoodAnswerPanel::showOrder()
{
    if (!m_context.answers.ready()) {
        m_order->setValue(QString(), QString());
        m_order->setCaption(tr("order by: being worked out"));
        return;
    }
    const domain::WoodAnswer &answer = m_context.answers.answers().wood;
    m_order->setRole(roleOf(answer.headline.standing));
    if (answer.orderBy.isValid()) {
        m_order->setValue(woodLocale().toString(answer.orderBy, QStringLiteral("d MMM")),
                          QString());
        m_order->setCaption(answer.amountInUnit.isEmpty()
                                ? tr("order by")
                                : tr("order by · %1").arg(answer.amountInUnit));
    } else {
        m_order->setValue(answer.uses.isEmpty() ? QString() : tr("None"), QString());
        m_order->setCaption(answer.uses.isEmpty() ? tr("order: no cook is booked")
                                                  : tr("to order for the booked cooks"));
    }
    QVector<SentencePart> parts;
    for (const domain::SentencePart &part : answer.headline.sentence)
        parts.append({part.text, part.emphasised, Role::Ink});
    m_sentence->setParts(parts);
    QStringList assumed;
    for (const domain::Reason &reason : answer.headline.reasons)
        if (reason.assumption)
            assumed << QString(reason.label + QStringLiteral(": ") + reason.value);
    m_why->setText(
        assumed.isEmpty()
            ? QString()
            : tr("Taken for granted: %1").arg(assumed.mid(0, 3).join(QStringLiteral("; "))));
    m_why->setVisible(!assumed.isEmpty());
    m_chart->show(m_context.books(), answer);
    m_chart->setVisible(answer.course.size() > 1);
}

} // namespace rickyard::views
