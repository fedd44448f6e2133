#include "views/events/next_event.h"

#include "models/domain/quantities/units.h"
#include "views/events/event_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

NextEvent::NextEvent(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext), m_sentence(new SentenceLabel(this)),
      m_cooks(new QVBoxLayout)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(2));
    m_sentence->setStyles(TextStyle::Heading, TextStyle::NumeralLarge);
    column->addWidget(m_sentence);
    m_cooks->setSpacing(theme(this).space(1));
    column->addLayout(m_cooks);
}

QString NextEvent::plainText() const
{
    return m_sentence->plainText();
}

void NextEvent::clear()
{
    clearLayout(m_cooks);
}

void NextEvent::refresh()
{
    clear();
    const Books &books = m_context.books();
    const Instant now = m_context.verbs.now();
    const RecordId id = nextEvent(books, now);
    if (id == 0) {
        m_sentence->setParts({{tr("No event ahead."), true, Role::Ink}});
        return;
    }
    const Event event = books.events.value(id);
    m_sentence->setParts(
        {{event.name, true, Role::Ink},
         {event.state == EventState::Proposed ? tr(" (proposed) ") : tr(" "), false, Role::Ink},
         {inDaysText(books, now, event), true, Role::Accent},
         {tr(", %1, serving ").arg(dateText(books, event.start, now)), false, Role::Ink},
         {clockText(books, event.start), true, Role::Ink}});
    const QVector<PlannedCook> cooks = cooksOf(books, id);
    for (const PlannedCook &cook : cooks)
        addCook(cook);
    if (cooks.isEmpty())
        addHint(tr("No cook is planned for it yet, so no wood is counted on."), tr("Plan a cook"),
                id);
}

void NextEvent::addCook(const PlannedCook &cook)
{
    const Books &books = m_context.books();
    const Theme &look = theme(this);
    auto *line = new QWidget(this);
    auto *row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(3));
    const QString pit = books.pits.value(cook.pit).name;
    QString text = tr("%1: light %2 at %3, %4")
                       .arg(pit, dateText(books, cook.light, m_context.verbs.now()),
                            clockText(books, cook.light), formatDuration(cook.length));
    const PlannedUse *use =
        m_context.answers.ready() ? useOf(m_context.answers.answers(), cook.id) : nullptr;
    if (use != nullptr)
        text += QString(QStringLiteral(" · ") + usePhrase(books, *use));
    auto *label = new TextLabel(text, TextStyle::Body, Role::Ink, line);
    label->setWordWrap(true);
    row->addWidget(label, 1);
    if (m_context.answers.ready()) {
        const WoodState state = woodStateOf(books, use);
        row->addWidget(new StatusPill(state.role, state.word, line));
    } else {
        row->addWidget(new StatusPill(Role::Info, tr("Working it out"), line));
    }
    auto *open = new QPushButton(tr("Open"), line);
    open->setProperty("role", "quiet");
    open->setAccessibleName(tr("Open the cook on %1").arg(pit));
    open->setMaximumHeight(look.px(28)); // a line of text: the calendar below needs the room
    connect(open, &QPushButton::clicked, this, [this, id = cook.id] {
        Q_EMIT opened(Link{TableId::PlannedCook, id});
    });
    row->addWidget(open);
    m_cooks->addWidget(line);
}

void NextEvent::addHint(const QString &text, const QString &button, qint64 event)
{
    auto *line = new QWidget(this);
    auto *row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(theme(this).space(3));
    row->addWidget(new TextLabel(text, TextStyle::Body, Role::InkMuted, line));
    auto *plan = new QPushButton(button, line);
    plan->setAccessibleName(button);
    plan->setEnabled(!m_context.readOnly());
    connect(plan, &QPushButton::clicked, this, [this, event] { Q_EMIT planAsked(event); });
    row->addWidget(plan);
    row->addStretch(1);
    m_cooks->addWidget(line);
}

} // namespace rickyard::views
