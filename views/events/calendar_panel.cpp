#include "views/events/calendar_panel.h"

#include "models/items/wording.h"
#include "models/workspace/commands/event_verbs.h"
#include "views/events/calendar.h"
#include "views/events/calendar_day.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/inline_question.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kWeeksBack = 8;
constexpr int kWeeksInAll = 68; // two months back, more than a year ahead

QDate mondayOf(QDate day)
{
    return day.addDays(1 - day.dayOfWeek());
}

} // namespace

CalendarPanel::CalendarPanel(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(buildBar());
    m_notice = new NoticeBar(this);
    column->addWidget(m_notice);
    m_question = new InlineQuestion(tr("Move it there"), tr("Leave it"), this);
    column->addWidget(m_question);
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(5));
    m_calendar = new Calendar(this);
    m_dayWords = new CalendarDay(m_context.readOnly(), this);
    row->addWidget(m_calendar, 1);
    row->addWidget(m_dayWords);
    column->addLayout(row, 1);
    onTheme(this, [this] { m_dayWords->setFixedWidth(theme(this).px(250)); });

    connect(m_calendar, &Calendar::opened, this, &CalendarPanel::opened);
    connect(m_calendar, &Calendar::addAsked, this, &CalendarPanel::addAsked);
    connect(m_calendar, &Calendar::dayChanged, this, &CalendarPanel::followDay);
    connect(m_calendar, &Calendar::moveAsked, this, &CalendarPanel::askMove);
    connect(m_calendar, &Calendar::notMovable, this, &CalendarPanel::sayNotMovable);
    connect(m_calendar->verticalScrollBar(), &QScrollBar::valueChanged, this,
            &CalendarPanel::followMonth);
    connect(m_dayWords, &CalendarDay::opened, this, &CalendarPanel::opened);
    connect(m_dayWords, &CalendarDay::addAsked, this, &CalendarPanel::addAsked);
    connect(m_question, &InlineQuestion::wentOn, this, [this] {
        m_question->dismiss();
        move(m_moving, m_movingTo);
        m_calendar->setFocus();
    });
    connect(m_question, &InlineQuestion::wentBack, this, [this] {
        m_question->dismiss();
        m_calendar->setFocus();
    });
}

QWidget *CalendarPanel::buildBar()
{
    const Theme &look = theme(this);
    auto *bar = new QWidget(this);
    auto *row = new QHBoxLayout(bar);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(2));
    m_month = new TextLabel(QString(), TextStyle::Heading, Role::Ink, bar);
    row->addWidget(m_month, 1);
    const auto button = [&](const QString &iconName, const QString &text, const QString &name,
                            auto slot) {
        auto *one = new QPushButton(text, bar);
        if (!iconName.isEmpty())
            one->setIcon(icon(iconName));
        one->setAccessibleName(name);
        one->setToolTip(name);
        connect(one, &QPushButton::clicked, this, slot);
        row->addWidget(one);
    };
    button(QStringLiteral("previous"), tr("Earlier"), tr("Four weeks earlier"),
           [this] { step(-4); });
    button(QString(), tr("Today"), tr("Show the week of today"), [this] {
        m_calendar->setDay(m_today);
        m_calendar->showWeekOf(m_today);
    });
    button(QStringLiteral("next"), tr("Later"), tr("Four weeks later"), [this] { step(4); });
    return bar;
}

void CalendarPanel::step(int weeks)
{
    const QDate to = m_calendar->firstDayShown().addDays(7 * weeks);
    const QDate first = mondayOf(m_today).addDays(-7 * kWeeksBack);
    const QDate last = first.addDays(7 * (kWeeksInAll - 1));
    m_calendar->showWeekOf(std::clamp(to, first, last));
}

void CalendarPanel::focusCalendar()
{
    m_calendar->setFocus(Qt::OtherFocusReason);
}

void CalendarPanel::refresh(const QVector<Clash> &clashes)
{
    const Books &books = m_context.books();
    m_today = items::toLocal(books, m_context.verbs.now()).date();
    const QDate from = mondayOf(m_today).addDays(-7 * kWeeksBack);
    m_calendar->setItems(from, kWeeksInAll, m_today,
                         calendarItems(books, m_context.answers.answers(), clashes, from,
                                       from.addDays(7 * kWeeksInAll), m_today));
    followDay();
    followMonth();
}

void CalendarPanel::followDay()
{
    m_dayWords->setDay(m_calendar->day(), m_today, m_calendar->items());
}

void CalendarPanel::followMonth()
{
    const QLocale locale(QStringLiteral("en_US"));
    const QDate first = m_calendar->firstDayShown();
    const QDate last = first.addDays(41);
    const bool sameYear = first.year() == last.year();
    m_month->setText(QString(
        locale.toString(first, sameYear ? QStringLiteral("MMMM") : QStringLiteral("MMMM yyyy")) +
        QStringLiteral(" – ") + locale.toString(last, QStringLiteral("MMMM yyyy"))));
}

Outcome<Moved> CalendarPanel::lookAhead(const Link &link, QDate day) const
{
    const Instant now = m_context.verbs.now();
    return link.table == TableId::Event ? movedEvent(m_context.books(), link.id, day, now)
                                        : movedCook(m_context.books(), link.id, day, now);
}

void CalendarPanel::askMove(const Link &link, int days)
{
    m_notice->dismiss();
    m_question->dismiss();
    const Books &books = m_context.books();
    if (m_context.readOnly()) {
        m_notice->showProblem(tr("This yard is open for reading only: nothing is moved."));
        return;
    }
    const Instant from = link.table == TableId::Event ? books.events.value(link.id).start
                                                      : books.plannedCooks.value(link.id).light;
    const QDate day = items::toLocal(books, from).date().addDays(days);
    const auto moved = lookAhead(link, day);
    if (!moved) {
        m_notice->showProblem(moved.message());
        return;
    }
    if (moved->past.isEmpty()) {
        move(link, day);
        return;
    }
    m_moving = link;
    m_movingTo = day;
    m_question->ask(moved->past);
}

void CalendarPanel::move(const Link &link, QDate day)
{
    const auto ahead = lookAhead(link, day);
    const auto done = link.table == TableId::Event
                          ? commands::moveEvent(m_context.verbs, link.id, day)
                          : commands::moveCook(m_context.verbs, link.id, day);
    if (!done) {
        m_notice->showProblem(done.message());
        return;
    }
    m_calendar->setDay(day);
    if (ahead)
        sayMoved(link, ahead.value(), day);
}

void CalendarPanel::sayMoved(const Link &link, const Moved &moved, QDate day)
{
    const Books &books = m_context.books();
    const QString where = QLocale(QStringLiteral("en_US")).toString(day, u"dddd d MMMM");
    const QString what =
        link.table == TableId::Event
            ? books.events.value(link.id).name
            : tr("The cook on %1")
                  .arg(books.pits.value(books.plannedCooks.value(link.id).pit).name);
    QString words = moved.cooks == 0   ? tr("%1 is on %2 now.").arg(what, where)
                    : moved.cooks == 1 ? tr("%1 and its cook are on %2 now.").arg(what, where)
                                       : tr("%1 is on %2 now, and its %3 cooks moved along.")
                                             .arg(what, where)
                                             .arg(moved.cooks);
    words += tr(" Undo takes it back.");
    m_context.say(words);
}

void CalendarPanel::sayNotMovable(const Link &link)
{
    switch (link.table) {
    case TableId::Event:
        m_notice->showProblem(
            movedEvent(m_context.books(), link.id, m_today, m_context.verbs.now()).message());
        return;
    case TableId::Cook:
        m_notice->showProblem(tr("A fire that burns or has burned stays on its day."));
        return;
    case TableId::UpkeepTask:
        m_notice->showProblem(tr("Upkeep is moved on the Upkeep page, which knows when a pit is "
                                 "cold and the crew there."));
        return;
    case TableId::WoodOrder:
        m_notice->showProblem(
            tr("A delivery comes on the day the supplier promised: change it in the order."));
        return;
    case TableId::BusyTime:
        m_notice->showProblem(
            tr("This stands in somebody's own calendar: move it there and import it again."));
        return;
    default:
        m_notice->showProblem(tr("This follows from the records and is not moved by hand."));
    }
}

} // namespace rickyard::views
