#include "views/events/event_details.h"

#include "models/domain/answers/wording.h"
#include "models/domain/plan/event_series.h"
#include "models/domain/quantities/units.h"
#include "models/items/wording.h"
#include "models/workspace/commands/event_verbs.h"
#include "views/events/event_words.h"
#include "views/events/later_question.h"
#include "views/events/load_list_view.h"
#include "views/events/repeat_rule.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/inline_question.h"
#include "views/widgets/numeral.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

EventDetail::EventDetail(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext),
      m_heading(new TextLabel(QString(), TextStyle::Heading, Role::Ink, this)),
      m_cooks(new QVBoxLayout), m_later(new LaterQuestion(pageContext, this)),
      m_series(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_plan(new QPushButton(icon(QStringLiteral("add")), tr("Plan a cook"), this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    column->addWidget(m_later);
    m_heading->setWordWrap(true);
    column->addWidget(m_heading);
    m_cooks->setSpacing(look.space(2));
    column->addLayout(m_cooks);
    m_series->setWordWrap(true);
    column->addWidget(m_series);
    m_endQuestion = new InlineQuestion(tr("Take them away"), tr("Leave them"), this);
    connect(m_endQuestion, &InlineQuestion::wentOn, this, &EventDetail::endSeries);
    connect(m_endQuestion, &InlineQuestion::wentBack, m_endQuestion, &InlineQuestion::dismiss);
    column->addWidget(m_endQuestion);
    buildActs(column);
    setEvent(0);
}

void EventDetail::buildActs(QVBoxLayout *column)
{
    auto *acts = new QWidget(this);
    auto *flow = new FlowLayout(acts);
    flow->setContentsMargins(0, 0, 0, 0);
    const auto act = [&](QPushButton *button, const QString &name, bool writes, auto slot) {
        button->setAccessibleName(name);
        button->setEnabled(!writes || !m_context.readOnly());
        connect(button, &QPushButton::clicked, this, slot);
        flow->addWidget(button);
        return button;
    };
    act(m_plan, tr("Plan a cook for this event"), true, [this] { Q_EMIT planAsked(m_event); });
    m_load =
        act(new QPushButton(tr("Load list"), this), tr("Load list of this event"), false, [this] {
            openLoadList(m_context, {TableId::Event, m_event}, window());
        });
    act(new QPushButton(tr("Repeat …"), this), tr("Repeat this event"), true,
        [this] { Q_EMIT repeatAsked(m_event); });
    act(new QPushButton(tr("Copy …"), this), tr("A new event like this one"), true,
        [this] { Q_EMIT copyAsked(m_event); });
    m_endSeries = act(new QPushButton(tr("End the series here …"), this),
                      tr("Take this event and the later ones of its series away"), true, [this] {
                          const auto later = laterInSeries(m_context.books(), m_event).size();
                          m_endQuestion->ask(tr("This event and %1 later of its series go, with "
                                                "their planned cooks. Undo brings them back.")
                                                 .arg(later));
                      });
    column->addWidget(acts);
}

void EventDetail::endSeries()
{
    m_endQuestion->dismiss();
    const auto gone = commands::endSeriesAt(m_context.verbs, m_event);
    if (!gone)
        m_context.refuse(gone.problems());
    else
        m_context.say(tr("%1 events are gone. Undo brings them back.").arg(gone.value()));
}

// "One of 6: every second Saturday, 6 times. 4 later ones."
void EventDetail::showSeries(const Event &event)
{
    m_endQuestion->dismiss();
    m_series->setVisible(!event.series.isEmpty());
    const Books &books = m_context.books();
    const auto later = laterInSeries(books, event.id).size();
    m_endSeries->setVisible(later > 0);
    if (event.series.isEmpty())
        return;
    Instant first = event.start;
    int all = 0;
    for (const Event &other : books.events)
        if (other.series == event.series) {
            first = std::min(first, other.start);
            ++all;
        }
    m_series->setText(
        tr("One of a series of %1: %2. %3 later.")
            .arg(all)
            .arg(repeatRuleWords(event.repeatRule, items::toLocal(books, first).date(),
                                 zoneOf(wordingOf(books))))
            .arg(later == 0 ? tr("None") : QString::number(later)));
}

void EventDetail::setEvent(RecordId event)
{
    if (event != m_event)
        m_later->dismiss();
    m_event = event;
    clearLayout(m_cooks);
    const Books &books = m_context.books();
    const auto found = books.events.constFind(event);
    setVisible(found != books.events.constEnd());
    if (found == books.events.constEnd())
        return;
    const QVector<PlannedCook> cooks = cooksOf(books, event);
    m_heading->setText(cooks.isEmpty()     ? tr("No cook planned for it yet")
                       : cooks.size() == 1 ? tr("1 cook planned")
                                           : tr("%1 cooks planned").arg(cooks.size()));
    m_load->setEnabled(!cooks.isEmpty());
    showSeries(*found);
    for (const PlannedCook &cook : cooks)
        addCook(cook);
}

void EventDetail::addCook(const PlannedCook &cook)
{
    const Books &books = m_context.books();
    const Theme &look = theme(this);
    auto *block = new QWidget(this);
    auto *column = new QVBoxLayout(block);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.px(2));
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(2));
    const QString pit = books.pits.value(cook.pit).name;
    auto *name = new TextLabel(pit, TextStyle::BodyStrong, Role::Ink, block);
    name->setWordWrap(true);
    row->addWidget(name, 1);
    auto *open = new QPushButton(tr("Open"), block);
    open->setProperty("role", "quiet");
    open->setAccessibleName(tr("Open the planned cook on %1").arg(pit));
    connect(open, &QPushButton::clicked, this, [this, id = cook.id] {
        Q_EMIT opened(Link{TableId::PlannedCook, id});
    });
    row->addWidget(open);
    column->addLayout(row);
    QStringList lines;
    lines << tr("Light %1 at %2, %3")
                 .arg(dateText(books, cook.light, m_context.verbs.now()),
                      clockText(books, cook.light), formatDuration(cook.length));
    const PlannedUse *use = useOf(m_context.answers.answers(), cook.id);
    if (use != nullptr) {
        lines << usePhrase(books, *use);
        const QString amount =
            amountPhrase(books, m_context.answers.answers().wood.stock, use->middle);
        if (!amount.isEmpty())
            lines << amount;
    }
    auto *text =
        new TextLabel(lines.join(QLatin1Char('\n')), TextStyle::Body, Role::InkMuted, block);
    text->setWordWrap(true);
    column->addWidget(text);
    const WoodState state = woodStateOf(books, use);
    column->addWidget(new StatusPill(state.role, state.word, block), 0, Qt::AlignLeft);
    m_cooks->addWidget(block);
}

PlannedCookDetail::PlannedCookDetail(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext), m_use(new Numeral(this)),
      m_state(new StatusPill(Role::Info, tr("Working it out"), this)),
      m_lines(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_later(new LaterQuestion(pageContext, this)), m_load(new QPushButton(tr("Load list"), this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    column->addWidget(m_later);
    column->addWidget(m_use);
    column->addWidget(m_state, 0, Qt::AlignLeft);
    m_lines->setWordWrap(true);
    column->addWidget(m_lines);
    m_load->setAccessibleName(tr("Load list of this cook"));
    connect(m_load, &QPushButton::clicked, this, [this] {
        openLoadList(m_context, {TableId::PlannedCook, m_cook}, window());
    });
    column->addWidget(m_load, 0, Qt::AlignLeft);
    setCook(0);
}

void PlannedCookDetail::setCook(RecordId cook)
{
    if (cook != m_cook)
        m_later->dismiss();
    m_cook = cook;
    const Books &books = m_context.books();
    setVisible(books.plannedCooks.contains(cook));
    if (isHidden())
        return;
    const Answers &answers = m_context.answers.answers();
    const PlannedUse *use = useOf(answers, cook);
    const WoodState state = woodStateOf(books, use);
    m_state->setStatus(state.role, state.word);
    m_use->setVisible(use != nullptr);
    m_load->setVisible(use != nullptr);
    if (use == nullptr) {
        m_lines->setText(tr("It is over, cancelled or already cooked: no wood is set aside."));
        return;
    }
    const bool metric = books.yard().metric;
    const QLocale locale(QStringLiteral("en_US"));
    const Unit *unit =
        findUnit(Dimension::Heat, metric ? QStringLiteral("MJ") : QStringLiteral("slb"));
    m_use->setValue(formatNumber(toUnit(use->middle.base(), *unit), 0, locale), unit->symbol);
    m_use->setCaption(tr("expected, likely %1 to %2")
                          .arg(formatNumber(toUnit(use->lower.base(), *unit), 0, locale),
                               formatNumber(toUnit(use->upper.base(), *unit), 0, locale)));
    QStringList lines;
    const QString amount = amountPhrase(books, answers.wood.stock, use->middle);
    if (!amount.isEmpty())
        lines << QString(amount.left(1).toUpper() + amount.mid(1));
    lines << tr("Outside about %1, %2")
                 .arg(domain::show(use->outside,
                                   metric ? UnitSystem::Metric : UnitSystem::UsCustomary, locale,
                                   0),
                      use->weatherBasis);
    if (!use->useBasis.isEmpty())
        lines << use->useBasis;
    m_lines->setText(lines.join(QLatin1Char('\n')));
}

} // namespace rickyard::views
