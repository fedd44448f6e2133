#include "views/ahead/order_what_if.h"

#include "models/domain/answers/wording.h"
#include "models/domain/wood/sale.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QGridLayout>
#include <QPushButton>
#include <QSlider>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using domain::WoodAnswer;
using domain::WoodSource;
using domain::WoodWhatIf;
using domain::WoodWhatIfAnswer;

namespace {

constexpr int kMostLateDays = 42;
constexpr int kMostUnits = 60;
// Colder and milder, in the yard's degrees.
constexpr int kMostColder = 40;
constexpr int kMostMilder = 20;
constexpr int kMostRisk = 40;     // per cent
constexpr int kAdviceAfter = 350; // milliseconds without a move

} // namespace

OrderWhatIf::OrderWhatIf(QWidget *parent) : QWidget(parent), m_work(this), m_adviceWork(this)
{
    build();
    m_adviceSoon.setSingleShot(true);
    m_adviceSoon.setInterval(kAdviceAfter);
    connect(&m_adviceSoon, &QTimer::timeout, this, &OrderWhatIf::askAdvice);
}

void OrderWhatIf::build()
{
    const Theme &look = theme(this);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(6));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(look.space(3));
    grid->setVerticalSpacing(look.space(2));
    grid->setColumnStretch(1, 1);
    m_sources = new QComboBox;
    m_sources->setAccessibleName(tr("Whose wood"));
    m_sources->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_sources->setMinimumContentsLength(16);
    grid->addWidget(new TextLabel(tr("Whose wood"), TextStyle::Label, Role::InkMuted), 0, 0);
    grid->addWidget(m_sources, 0, 1, 1, 2);
    addLever(grid, Amount, tr("Amount"));
    addLever(grid, Day, tr("Ordered on"));
    addLever(grid, Late, tr("Comes late by"));
    addLever(grid, Colder, tr("Every cook colder by"));
    addLever(grid, Risk, tr("Risk accepted"));
    row->addLayout(grid, 5);
    auto *answer = new QVBoxLayout;
    answer->setSpacing(look.space(2));
    m_pill = new StatusPill(Role::Info, QString());
    m_sentence = new SentenceLabel;
    m_sentence->setStyles(TextStyle::Body, TextStyle::Heading);
    m_advice = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_advice->setWordWrap(true);
    m_write = new QPushButton(tr("Write the order"));
    m_write->setAccessibleName(tr("Write this order as a draft"));
    answer->addWidget(m_pill, 0, Qt::AlignLeft);
    answer->addWidget(m_sentence);
    answer->addWidget(m_advice);
    answer->addWidget(m_write, 0, Qt::AlignLeft);
    answer->addStretch(1);
    row->addLayout(answer, 4);
    connect(m_sources, &QComboBox::activated, this, [this] {
        m_touched = true;
        reset();
        moved();
    });
    connect(m_write, &QPushButton::clicked, this, [this] {
        const WoodWhatIf now = asked();
        if (now.source >= 0)
            Q_EMIT writeAsked(now.source, now.units);
    });
}

void OrderWhatIf::addLever(QGridLayout *grid, Lever lever, const QString &name)
{
    const Theme &look = theme(this);
    const int line = grid->rowCount();
    auto *label = new TextLabel(name, TextStyle::Label, Role::InkMuted);
    auto *slider = new QSlider(Qt::Horizontal);
    slider->setAccessibleName(name);
    slider->setMinimumWidth(look.px(140));
    auto *value = new TextLabel(QString(), TextStyle::BodyStrong);
    value->setMinimumWidth(look.px(110));
    value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    grid->addWidget(label, line, 0);
    grid->addWidget(slider, line, 1);
    grid->addWidget(value, line, 2);
    m_levers[lever] = {label, slider, value};
    connect(slider, &QSlider::valueChanged, this, [this] {
        m_touched = true;
        moved();
    });
}

void OrderWhatIf::setWritable(bool writable)
{
    m_write->setProperty("writable", writable);
    m_write->setEnabled(writable && asked().source >= 0);
}

void OrderWhatIf::show(const WoodAnswer &answer, const domain::Wording &wording)
{
    const int chosen = m_touched ? m_sources->currentData().toInt() : -2;
    const QString name = m_sources->currentText();
    m_answer = std::make_shared<const WoodAnswer>(answer);
    m_wording = wording;
    fillSources();
    // The same wood of the same supplier may stand in another place now.
    const bool kept = chosen != -2 && m_sources->findText(name) >= 0;
    if (kept) {
        m_sources->setCurrentIndex(m_sources->findText(name));
    } else {
        m_touched = false;
        const int first = answer.orders.isEmpty() ? -1 : answer.orders.first().source;
        m_sources->setCurrentIndex(std::max(0, m_sources->findData(first)));
        reset();
    }
    moved();
}

void OrderWhatIf::fillSources()
{
    const QSignalBlocker quiet(m_sources);
    m_sources->clear();
    m_sources->addItem(tr("Nothing is ordered"), -1);
    for (int i = 0; i < m_answer->sources.size(); ++i)
        m_sources->addItem(m_answer->sources.at(i).name, i);
}

void OrderWhatIf::chooseSource(int source)
{
    const int at = m_sources->findData(source);
    if (at < 0)
        return;
    m_touched = true;
    m_sources->setCurrentIndex(at);
    reset();
    moved();
}

// The sliders at what is proposed for the chosen wood.
void OrderWhatIf::reset()
{
    const int source = m_sources->currentData().toInt();
    const domain::WoodOrderChoice *choice = nullptr;
    for (const auto &list : {&m_answer->orders, &m_answer->greenOrders})
        for (const domain::WoodOrderChoice &one : *list)
            if (one.source == source && choice == nullptr)
                choice = &one;
    const int units = choice != nullptr ? choice->units : 1;
    const qint64 day =
        choice != nullptr ? std::max<qint64>(0, m_answer->today.daysTo(choice->orderBy)) : 0;
    const qint64 last =
        m_answer->course.isEmpty() ? 1 : m_answer->today.daysTo(m_answer->course.last().day);
    const int values[LeverCount] = {units, static_cast<int>(day), 0, 0,
                                    static_cast<int>(std::lround(100 * m_answer->acceptedRisk))};
    const QPair<int, int> ranges[LeverCount] = {{1, std::min(kMostUnits, std::max(6, 3 * units))},
                                                {0, static_cast<int>(std::max<qint64>(1, last))},
                                                {0, kMostLateDays},
                                                {-kMostMilder, kMostColder},
                                                {1, kMostRisk}};
    for (int i = 0; i < LeverCount; ++i) {
        QSlider *slider = m_levers[static_cast<size_t>(i)].slider;
        const QSignalBlocker quiet(slider);
        slider->setRange(ranges[i].first, ranges[i].second);
        slider->setPageStep(std::max(1, (ranges[i].second - ranges[i].first) / 8));
        slider->setValue(values[i]);
    }
}

double OrderWhatIf::colderKelvin() const
{
    const double degrees = m_levers[Colder].slider->value();
    return m_wording.metric ? degrees : degrees / 1.8;
}

WoodWhatIf OrderWhatIf::asked() const
{
    WoodWhatIf ask;
    if (!m_answer)
        return ask;
    ask.source = m_sources->currentData().toInt();
    ask.units = ask.source < 0 ? 0 : m_levers[Amount].slider->value();
    ask.orderDay = m_answer->today.addDays(m_levers[Day].slider->value());
    ask.daysLate = m_levers[Late].slider->value();
    ask.colderKelvin = colderKelvin();
    ask.acceptedRisk = m_levers[Risk].slider->value() / 100.0;
    return ask;
}

bool OrderWhatIf::atProposal() const
{
    if (!m_answer || m_answer->orders.isEmpty())
        return false;
    const domain::WoodOrderChoice &best = m_answer->orders.first();
    const WoodWhatIf ask = asked();
    return ask.source == best.source && ask.units == best.units && ask.orderDay == best.orderBy &&
           ask.daysLate == 0 && ask.colderKelvin == 0;
}

QString OrderWhatIf::leverText(Lever lever) const
{
    const int value = m_levers[lever].slider->value();
    const int source = m_sources->currentData().toInt();
    switch (lever) {
    case Amount:
        return source < 0 ? tr("none")
                          : domain::unitWords(m_answer->sources.at(source).unit, value);
    case Day:
        return value == 0 ? tr("today")
                          : domain::dayWithWeekday(m_answer->today.addDays(value), m_wording);
    case Late:
        return domain::daysWords(value);
    case Colder: {
        const QString degrees = m_wording.metric ? tr("%1 °C") : tr("%1 °F");
        return value >= 0 ? degrees.arg(value) : tr("%1 milder").arg(degrees.arg(-value));
    }
    case Risk:
    case LeverCount:
        break;
    }
    return tr("%1 %").arg(value);
}

void OrderWhatIf::showValues()
{
    const bool ordering = m_sources->currentData().toInt() >= 0;
    for (int i = 0; i < LeverCount; ++i) {
        const auto lever = static_cast<Lever>(i);
        const QString text = leverText(lever);
        m_levers[lever].value->setText(text);
        m_levers[lever].slider->setAccessibleDescription(text);
        if (lever == Amount || lever == Day || lever == Late)
            m_levers[lever].slider->setEnabled(ordering);
    }
    m_write->setEnabled(ordering && m_write->property("writable").toBool());
}

void OrderWhatIf::moved()
{
    if (!m_answer)
        return;
    showValues();
    m_advice->clear();
    m_advice->hide();
    m_adviceWork.cancel();
    ask();
    m_adviceSoon.start();
}

void OrderWhatIf::ask()
{
    // Let it finish: a slider that keeps moving would else never see an answer.
    m_again = m_work.running();
    if (m_again)
        return;
    m_work.run<WoodWhatIfAnswer>(
        [answer = m_answer, ask = asked(), wording = m_wording](LatestWork::Watch &watch) {
            return domain::woodWhatIf(*answer, ask, wording,
                                      [&watch] { return watch.cancelled.load(); });
        },
        [this](const WoodWhatIfAnswer &result) {
            take(result);
            if (m_again)
                ask();
        });
}

bool OrderWhatIf::settled() const
{
    return m_answer && !m_work.running() && !m_again;
}

void OrderWhatIf::take(const WoodWhatIfAnswer &result)
{
    if (result.cancelled)
        return;
    m_result = result;
    const WoodWhatIf ask = asked();
    QVector<SentencePart> parts;
    const auto plain = [&](const QString &text) { parts.append({text, false, Role::Ink}); };
    const auto strong = [&](const QString &text) { parts.append({text, true, Role::Ink}); };
    if (result.worst < 0) {
        plain(tr("No event is ahead that could run short."));
    } else {
        const domain::WoodRisk &worst = result.risks.at(result.worst);
        strong(worst.name);
        plain(tr(" on %1 runs short with a chance of ")
                  .arg(domain::dayWithWeekday(worst.day, m_wording)));
        strong(domain::chanceWords(worst.chance, worst.error, m_wording));
        const auto accepted = std::lround(100 * *ask.acceptedRisk);
        plain(result.keeps ? tr(", within the %1 % accepted.").arg(accepted)
              : std::lround(100 * worst.chance) <= accepted
                  ? tr(", just over the %1 % accepted.").arg(accepted)
                  : tr(", over the %1 % accepted.").arg(accepted));
    }
    if (result.arrival.isValid())
        plain(tr(" Likely there by %1.").arg(domain::dayWithWeekday(result.arrival, m_wording)));
    if (result.cost)
        plain(tr(" Costs %1.").arg(domain::moneyWords(result.cost->toDouble(), m_wording)));
    m_sentence->setParts(parts);
    const bool judged = result.worst >= 0;
    m_pill->setStatus(!judged ? Role::Info : (result.keeps ? Role::Good : Role::Act),
                      !judged ? QString()
                              : (result.keeps ? tr("within the risk") : tr("too risky")));
    Q_EMIT answered();
}

// What would be ordered at another accepted risk; some twenty runs a source, so only at rest.
void OrderWhatIf::askAdvice()
{
    if (!m_answer || !m_answer->planner ||
        std::abs(m_levers[Risk].slider->value() / 100.0 - m_answer->acceptedRisk) < 1e-9)
        return;
    WoodWhatIf ask = asked();
    ask.advise = true;
    m_adviceWork.run<WoodWhatIfAnswer>(
        [answer = m_answer, ask, wording = m_wording](LatestWork::Watch &watch) {
            return domain::woodWhatIf(*answer, ask, wording,
                                      [&watch] { return watch.cancelled.load(); });
        },
        [this](const WoodWhatIfAnswer &result) {
            if (result.cancelled)
                return;
            const int percent = m_levers[Risk].slider->value();
            m_advice->setText(
                result.orders.isEmpty()
                    ? tr("At %1 % nothing need be ordered, or nothing would help.").arg(percent)
                    : tr("At %1 % the proposal would be %2 by %3.")
                          .arg(percent)
                          .arg(result.orders.first().amount,
                               domain::dayWithWeekday(result.orders.first().orderBy, m_wording)));
            m_advice->show();
        });
}

QString OrderWhatIf::sentence() const
{
    return m_sentence->plainText();
}

QString OrderWhatIf::advice() const
{
    return m_advice->isHidden() ? QString() : m_advice->text();
}

} // namespace rickyard::views
