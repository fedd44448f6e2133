#include "views/wood/lot_detail.h"

#include "models/domain/answers/answers.h"
#include "models/domain/wood/delivery.h"
#include "models/domain/wood/offers.h"
#include "models/domain/wood/value.h"
#include "models/items/wording.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/fitting_stack.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/numeral.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"
#include "views/wood/count_panel.h"
#include "views/wood/drying_panel.h"
#include "views/wood/hold_panel.h"
#include "views/wood/reading_entry.h"
#include "views/wood/wood_words.h"

#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::Lot;
using domain::LotStock;
using domain::Readiness;

namespace {

TextLabel *wrapped(TextStyle style, Role role)
{
    auto *label = new TextLabel(QString(), style, role);
    label->setWordWrap(true);
    return label;
}

} // namespace

LotDetail::LotDetail(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_stack(new FittingStack),
      m_reading(new ReadingEntry(context)), m_count(new CountPanel(context)),
      m_hold(new HoldPanel(context))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_stack);
    m_stack->addWidget(buildFacts());
    m_stack->addWidget(m_reading);
    m_stack->addWidget(m_count);
    m_stack->addWidget(m_hold);
    const auto back = [this] { openPanel(Panel::Facts); };
    connect(m_reading, &ReadingEntry::saved, this, back);
    connect(m_reading, &ReadingEntry::closed, this, back);
    connect(m_count, &CountPanel::saved, this, back);
    connect(m_count, &CountPanel::closed, this, back);
    connect(m_hold, &HoldPanel::saved, this, back);
    connect(m_hold, &HoldPanel::closed, this, back);
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this, [this] { refresh(); });
    connect(&context.answers, &workspace::AnswersService::updated, this, [this] {
        showBurn();
        // The price of a typical cook rests on the cooks.
        if (m_context.books().lots.contains(m_lot))
            showDelivery(m_context.books().lots.value(m_lot));
    });
    setVisible(false);
}

QWidget *LotDetail::buildFacts()
{
    const Theme &look = theme(this);
    auto *facts = new QWidget;
    auto *column = new QVBoxLayout(facts);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    auto *head = new QHBoxLayout;
    m_name = wrapped(TextStyle::Heading, Role::Ink);
    m_pill = new StatusPill(Role::Info, QString());
    head->addWidget(m_name, 1);
    head->addWidget(m_pill, 0, Qt::AlignTop);
    column->addLayout(head);
    auto *numerals = new QHBoxLayout;
    numerals->setSpacing(look.space(4));
    m_heat = new Numeral;
    m_stacked = new Numeral;
    m_splits = new Numeral;
    for (Numeral *numeral : {m_heat, m_stacked, m_splits}) {
        numeral->setTextStyle(TextStyle::Title);
        numerals->addWidget(numeral);
    }
    numerals->addStretch(1);
    column->addLayout(numerals);
    column->addWidget(buildActs());
    m_burn = wrapped(TextStyle::BodyStrong, Role::Ink);
    m_moisture = wrapped(TextStyle::Body, Role::Ink);
    m_drying = new DryingPanel(m_context);
    m_amounts = wrapped(TextStyle::Body, Role::InkMuted);
    m_value = wrapped(TextStyle::Body, Role::InkMuted);
    for (QWidget *part :
         std::initializer_list<QWidget *>{m_burn, m_moisture, m_drying, m_amounts, m_value})
        column->addWidget(part);
    m_deliveryPill = new StatusPill(Role::Info, QString());
    m_delivery = wrapped(TextStyle::Body, Role::Ink);
    m_findings = wrapped(TextStyle::Caption, Role::InkMuted);
    auto *delivery = new QHBoxLayout;
    delivery->setSpacing(look.space(2));
    delivery->addWidget(m_deliveryPill, 0, Qt::AlignTop);
    delivery->addWidget(m_delivery, 1);
    column->addLayout(delivery);
    column->addWidget(m_findings);
    m_caution = new CautionNote(QString());
    column->addWidget(m_caution);
    column->addStretch(1);
    return facts;
}

QWidget *LotDetail::buildActs()
{
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row);
    flow->setContentsMargins(0, 0, 0, 0);
    const auto act = [&](const QString &text, Panel panel) {
        auto *button = new QPushButton(text);
        button->setAccessibleName(text);
        connect(button, &QPushButton::clicked, this, [this, panel] { openPanel(panel); });
        flow->addWidget(button);
        m_acts << button;
        return button;
    };
    act(tr("Log reading"), Panel::Reading);
    act(tr("Count"), Panel::Count);
    m_holdButton = act(tr("Put on hold"), Panel::Hold);
    return row;
}

LotDetail::Panel LotDetail::panel() const
{
    return static_cast<Panel>(m_stack->currentIndex());
}

void LotDetail::openPanel(Panel panel)
{
    if (m_lot == 0 || (m_context.readOnly() && panel != Panel::Facts))
        return;
    m_stack->setCurrentIndex(static_cast<int>(panel));
    if (panel == Panel::Reading)
        m_reading->start(m_lot);
    else if (panel == Panel::Count)
        m_count->start(m_lot);
    else if (panel == Panel::Hold)
        m_hold->start(m_lot);
    else
        refresh();
    m_stack->updateGeometry();
    Q_EMIT panelChanged(panel != Panel::Facts);
}

void LotDetail::setLot(domain::RecordId lot)
{
    const bool other = lot != m_lot;
    m_lot = lot;
    setVisible(lot != 0);
    if (other && panel() != Panel::Facts) {
        m_stack->setCurrentIndex(static_cast<int>(Panel::Facts));
        Q_EMIT panelChanged(false);
    }
    refresh();
}

QString LotDetail::deliveryText() const
{
    return m_delivery->text();
}

void LotDetail::refresh()
{
    if (m_lot == 0 || !m_context.books().lots.contains(m_lot))
        return;
    const Lot lot = m_context.books().lots.value(m_lot);
    const LotStock stock = domain::lotStockAt(m_context.books(), m_lot, m_context.verbs.now());
    m_name->setText(lot.name);
    m_pill->setStatus(readinessRole(stock.readiness), readinessWord(stock.readiness));
    showAmounts(stock);
    showMoisture(stock);
    showValue(lot, stock);
    showBurn();
    m_drying->setLot(m_lot);
    showDelivery(lot);
    showCaution(lot, stock);
    m_holdButton->setText(lot.hold ? tr("Lift the hold") : tr("Put on hold"));
    m_holdButton->setAccessibleName(m_holdButton->text());
    for (QPushButton *button : std::as_const(m_acts))
        button->setEnabled(!m_context.readOnly());
}

void LotDetail::showAmounts(const LotStock &stock)
{
    const bool metric = m_context.books().yard().metric;
    const Amount heat = heatAmount(stock.netHeat, metric);
    m_heat->setValue(heat.value, heat.unit);
    m_heat->setCaption(stock.moistureAssumed ? tr("heat, moisture assumed") : tr("heat"));
    const Amount stacked = stackedAmount(stock.stacked, metric);
    m_stacked->setValue(stacked.value, stacked.unit);
    m_stacked->setCaption(tr("stacked"));
    m_splits->setValue(
        stock.splits ? domain::formatNumber(*stock.splits, 0, woodLocale()) : QString(), QString());
    m_splits->setCaption(stock.splits ? tr("splits, about") : tr("splits: weigh some"));
    QStringList parts;
    parts << tr("%1 stacked").arg(solidAmount(stock.stacked, metric).text())
          << tr("%1 of wood").arg(solidAmount(stock.solid, metric).text());
    parts << (stock.asIs ? tr("%1 as it is").arg(massAmount(*stock.asIs, metric).text())
                         : tr("weight as it is unknown until it is read"));
    parts << tr("%1 oven-dry").arg(massAmount(stock.dryMass, metric).text());
    m_amounts->setText(parts.join(QStringLiteral(" · ")));
    if (stock.dryMass < domain::Mass())
        m_amounts->setText(tr("The books are %1 below zero: more was burned than came. Count what "
                              "is there.")
                               .arg(massAmount(-stock.dryMass, metric).text()));
}

void LotDetail::showMoisture(const LotStock &stock)
{
    if (!stock.moisture) {
        m_moisture->setText(tr("No moisture reading yet, so it does not count as dry."));
        return;
    }
    QString text = bothBases(*stock.moisture);
    if (stock.moistureHalfWidth)
        text += tr(", ± %1 points")
                    .arg(domain::formatNumber(100 * domain::dryFraction(*stock.moistureHalfWidth),
                                              1, woodLocale()));
    if (stock.readAt)
        text += tr(", read %1")
                    .arg(items::dayText(items::toLocal(m_context.books(), *stock.readAt).date(),
                                        woodLocale()));
    text += QLatin1Char('.');
    if (!stock.moistureNote.isEmpty())
        text += QString(QLatin1Char(' ') + stock.moistureNote + QLatin1Char('.'));
    if (!stock.correction.isEmpty())
        text += QString(QLatin1Char(' ') + stock.correction + QLatin1Char('.'));
    m_moisture->setText(text);
}

// What the wood is worth in heat and money, by the unit that a person has in hand.
void LotDetail::showValue(const Lot &lot, const LotStock &stock)
{
    const bool metric = m_context.books().yard().metric;
    const domain::WoodValue value = domain::woodValue(m_context.books(), lot, stock);
    const QString unit = metric ? tr("MJ") : tr("thousand Btu");
    const auto heat = [&](double joules, int digits) {
        const double shown = metric ? joules / 1e6 : joules / domain::kJoulesPerBtu / 1e3;
        return QString(domain::formatNumber(shown, digits, woodLocale()) + QChar(0x2009) + unit);
    };
    QStringList parts;
    parts << tr("%1 net a dry %2")
                 .arg(heat(value.perDryKilogram * (metric ? 1 : domain::kKilogramsPerPound), 1),
                      metric ? tr("kilogram") : tr("pound"))
          << tr("%1 a split").arg(heat(value.perSplit, 0))
          << tr("%1 %2 a cord of 85 ft³ solid")
                 .arg(domain::formatNumber(metric ? value.perCord / 1e9
                                                  : value.perCord / domain::kJoulesPerBtu / 1e6,
                                           1, woodLocale()),
                      metric ? tr("GJ") : tr("million Btu"))
          << tr("%1 ash in all").arg(massAmount(value.ash, metric).text());
    m_value->setText(parts.join(QStringLiteral(" · ")));
}

void LotDetail::showBurn()
{
    m_burn->setVisible(false);
    for (const domain::BurnChoice &choice : m_context.answers.answers().burn) {
        if (choice.lot != m_lot || choice.rank == 0)
            continue;
        m_burn->setText(choice.rank == 1 && choice.keptFor == 0
                            ? tr("Burn this one first: %1.").arg(choice.reason)
                            : tr("Number %1 to burn: %2.").arg(choice.rank).arg(choice.reason));
        m_burn->setVisible(true);
    }
}

void LotDetail::showDelivery(const Lot &lot)
{
    const auto cook = m_context.answers.ready()
                          ? domain::typicalCookHeat(m_context.answers.answers().fuel.cooks)
                          : std::nullopt;
    const domain::DeliveryCheck check =
        domain::checkDelivery(m_context.books(), lot, domain::wordingOf(m_context.books()), cook);
    m_deliveryPill->setStatus(deliveryRole(check.headline.standing),
                              deliveryWord(check.headline.standing));
    m_delivery->setText(check.headline.plainSentence());
    QStringList findings;
    for (const domain::Reason &reason : check.headline.reasons)
        findings << QString(reason.label + QStringLiteral(": ") + reason.value +
                            (reason.assumption ? tr(" (assumed)") : QString()));
    m_findings->setText(findings.join(QLatin1Char('\n')));
}

void LotDetail::showCaution(const Lot &lot, const LotStock &stock)
{
    const domain::Species species = m_context.books().species.value(lot.species);
    QString words;
    if (species.neverBurn)
        words =
            species.neverBurnReason.isEmpty()
                ? tr("%1 is never burned for food.").arg(species.name)
                : tr("%1 is never burned for food: %2").arg(species.name, species.neverBurnReason);
    else if (lot.hold)
        words = tr("On hold%1. It stays out of the fire until the crew lifts the hold.")
                    .arg(lot.holdReason.isEmpty() ? QString()
                                                  : QString(QStringLiteral(": ") + lot.holdReason));
    else if (stock.readiness == Readiness::Wet)
        words = tr("Wet wood smokes, fouls the stack and draws badly. If mould shows in the rick, "
                   "put it on hold.");
    m_caution->setVisible(!words.isEmpty());
    if (!words.isEmpty())
        m_caution->setCaution(words);
}

} // namespace rickyard::views
