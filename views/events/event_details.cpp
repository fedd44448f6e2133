#include "views/events/event_details.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "views/events/event_words.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
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
      m_cooks(new QVBoxLayout),
      m_plan(new QPushButton(icon(QStringLiteral("add")), tr("Plan a cook"), this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_heading->setWordWrap(true);
    column->addWidget(m_heading);
    m_cooks->setSpacing(look.space(2));
    column->addLayout(m_cooks);
    m_plan->setAccessibleName(tr("Plan a cook for this event"));
    m_plan->setEnabled(!m_context.readOnly());
    connect(m_plan, &QPushButton::clicked, this, [this] { Q_EMIT planAsked(m_event); });
    column->addWidget(m_plan, 0, Qt::AlignLeft);
    setEvent(0);
}

void EventDetail::setEvent(RecordId event)
{
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
      m_lines(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    column->addWidget(m_use);
    column->addWidget(m_state, 0, Qt::AlignLeft);
    m_lines->setWordWrap(true);
    column->addWidget(m_lines);
    setCook(0);
}

void PlannedCookDetail::setCook(RecordId cook)
{
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
