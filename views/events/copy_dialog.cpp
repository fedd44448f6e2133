#include "views/events/copy_dialog.h"

#include "models/domain/quantities/units.h"
#include "models/items/wording.h"
#include "models/workspace/commands/event_verbs.h"
#include "views/events/event_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/scroll_column.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QTimeEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QLocale copyLocale()
{
    return QLocale(QStringLiteral("en_US"));
}

QString sourceWords(const Books &books, const Event &event)
{
    const QString day = copyLocale().toString(items::toLocal(books, event.start).date(),
                                              QStringLiteral("d MMM yyyy"));
    return event.place.isEmpty() ? QString(event.name + QStringLiteral(" · ") + day)
                                 : QString(event.name + QStringLiteral(" · ") + event.place +
                                           QStringLiteral(" · ") + day);
}

QString cookWords(const Books &books, const PlannedCook &cook)
{
    QStringList parts;
    parts << CopyDialog::tr("Light %1 for %2")
                 .arg(QString(LocalTime(books.yard().timeZone)
                                  .dayText(items::toLocal(books, cook.light).date()) +
                              QStringLiteral(", ") + clockText(books, cook.light)),
                      formatDuration(cook.length));
    if (!cook.foods.isEmpty())
        parts << cook.foods;
    if (cook.foodMass)
        parts << domain::show(*cook.foodMass,
                              books.yard().metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
                              copyLocale(), 0);
    if (cook.species)
        parts << books.species.value(*cook.species).name;
    return parts.join(QStringLiteral(" · "));
}

} // namespace

QVector<RecordId> eventsToCopy(const Books &books, RecordId like, Instant now)
{
    const QString place = books.events.value(like).place;
    QVector<Event> events(books.events.cbegin(), books.events.cend());
    const auto rank = [&](const Event &event) {
        if (event.id == like)
            return 0;
        const int here = !place.isEmpty() && event.place == place ? 1 : 3;
        return event.start <= now ? here : here + 1;
    };
    std::stable_sort(events.begin(), events.end(), [&](const Event &a, const Event &b) {
        return rank(a) != rank(b) ? rank(a) < rank(b) : a.start > b.start;
    });
    QVector<RecordId> ids;
    for (const Event &event : events)
        ids << event.id;
    return ids;
}

CopyDialog::CopyDialog(PageContext &pageContext, RecordId like, QDate day, QWidget *parent)
    : QDialog(parent), m_context(pageContext), m_wantedDay(day)
{
    const Theme &look = theme(this);
    setWindowTitle(tr("Copy from last time"));
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(5), look.space(5), look.space(5), look.space(5));
    column->setSpacing(look.space(4));
    column->addWidget(new TextLabel(windowTitle(), TextStyle::Title, Role::Ink));
    buildFields(column);
    m_notice = new NoticeBar(this);
    column->addWidget(m_notice);
    m_sum = new TextLabel(QString(), TextStyle::Heading, Role::Ink);
    m_sum->setWordWrap(true);
    column->addWidget(m_sum);
    m_list = addScrollColumn(column, this, look.space(3));
    buildActs(column);
    resize(look.px(600), look.px(660));
    for (const RecordId id : eventsToCopy(m_context.books(), like, m_context.verbs.now()))
        m_source->addItem(sourceWords(m_context.books(), m_context.books().events.value(id)), id);
    connect(m_source, &QComboBox::currentIndexChanged, this, &CopyDialog::chooseSource);
    chooseSource();
}

void CopyDialog::buildFields(QVBoxLayout *column)
{
    const Theme &look = theme(this);
    m_source = new QComboBox(this);
    m_source->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_source->setMinimumContentsLength(20);
    column->addWidget(new FieldRow(tr("Event to copy"), m_source, this));
    m_name = new QLineEdit(this);
    column->addWidget(new FieldRow(tr("Name"), m_name, this));
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(4));
    m_day = new QDateEdit(this);
    m_day->setLocale(copyLocale());
    m_day->setDisplayFormat(QStringLiteral("ddd d MMM yyyy"));
    m_day->setCalendarPopup(true);
    row->addWidget(new FieldRow(tr("New day"), m_day, this), 1);
    m_clock = new QTimeEdit(this);
    m_clock->setLocale(copyLocale());
    m_clock->setDisplayFormat(QStringLiteral("h:mm AP"));
    row->addWidget(new FieldRow(tr("Serving from"), m_clock, this), 1);
    column->addLayout(row);
    m_asCooked = new QCheckBox(tr("Hours and food as it was cooked, not as it was planned"), this);
    column->addWidget(m_asCooked);
    connect(m_day, &QDateEdit::dateChanged, this, &CopyDialog::showCopy);
    connect(m_clock, &QTimeEdit::timeChanged, this, &CopyDialog::showCopy);
    connect(m_asCooked, &QCheckBox::toggled, this, &CopyDialog::showCopy);
}

void CopyDialog::buildActs(QVBoxLayout *column)
{
    auto *row = new QHBoxLayout;
    row->setSpacing(theme(this).space(3));
    auto *cancel = new QPushButton(tr("Cancel"), this);
    cancel->setAutoDefault(false);
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
    m_make = new QPushButton(tr("Add the event"), this);
    m_make->setProperty("role", "primary");
    m_make->setAccessibleName(m_make->text());
    m_make->setDefault(true);
    connect(m_make, &QPushButton::clicked, this, &CopyDialog::write);
    row->addStretch(1);
    row->addWidget(cancel);
    row->addWidget(m_make);
    column->addLayout(row);
}

RecordId CopyDialog::source() const
{
    return m_source->currentData().toLongLong();
}

// The first one that comes on the event's weekday and holds no other event.
QDate CopyDialog::freeDayLike(const Event &event) const
{
    const Books &books = m_context.books();
    const QDate today = items::toLocal(books, m_context.verbs.now()).date();
    const int weekday = items::toLocal(books, event.start).date().dayOfWeek();
    QSet<QDate> taken;
    for (const Event &other : books.events)
        if (other.state != EventState::Cancelled)
            taken.insert(items::toLocal(books, other.start).date());
    QDate day = today.addDays(1);
    while (day.dayOfWeek() != weekday)
        day = day.addDays(1);
    while (taken.contains(day))
        day = day.addDays(7);
    return day;
}

void CopyDialog::chooseSource()
{
    const Books &books = m_context.books();
    const auto found = books.events.constFind(source());
    const bool any = found != books.events.constEnd();
    m_make->setEnabled(any && !m_context.readOnly());
    if (!any) {
        m_sum->setText(tr("There is no event yet to copy from."));
        return;
    }
    m_name->setText(found->name);
    m_clock->setTime(items::toLocal(books, found->start).time());
    m_day->setDate(m_wantedDay.isValid() ? m_wantedDay : freeDayLike(*found));
    bool cooked = false;
    for (const Cook &cook : books.cooks)
        if (cook.fireOut && cook.planned &&
            books.plannedCooks.value(*cook.planned).event.value_or(0) == found->id)
            cooked = true;
    m_asCooked->setVisible(cooked);
    m_asCooked->setChecked(false);
    showCopy();
}

EventCopy CopyDialog::copy() const
{
    const Books &books = m_context.books();
    const LocalTime local(books.yard().timeZone);
    const Instant start =
        local.at(m_day->date(), Duration::ofBase(m_clock->time().msecsSinceStartOfDay() / 1000));
    EventCopy copy = copyOf(books, source(), start,
                            m_asCooked->isChecked() ? CopyHours::AsCooked : CopyHours::AsPlanned);
    copy.event.name = m_name->text().trimmed();
    return copy;
}

void CopyDialog::showCopy()
{
    m_notice->dismiss();
    clearLayout(m_list);
    m_lines.clear();
    if (source() == 0)
        return;
    const Books &books = m_context.books();
    const EventCopy made = copy();
    m_sum->setText(made.cooks.isEmpty()     ? tr("It has no planned cook to take along.")
                   : made.cooks.size() == 1 ? tr("With 1 cook:")
                                            : tr("With %1 cooks:").arg(made.cooks.size()));
    m_lines << m_sum->text();
    const auto add = [&](const QString &text, TextStyle style, Role role) {
        auto *label = new TextLabel(text, style, role);
        label->setWordWrap(true);
        m_list->addWidget(label);
        m_lines << text;
    };
    for (const PlannedCook &cook : made.cooks) {
        add(books.pits.value(cook.pit).name, TextStyle::BodyStrong, Role::Ink);
        add(cookWords(books, cook), TextStyle::Body, Role::InkMuted);
    }
    const bool past = made.event.end <= m_context.verbs.now();
    if (past)
        add(tr("That day is past: the event would count as over, and no wood is set aside for "
               "it."),
            TextStyle::Body, Role::Ink);
    for (const Clash &clash : clashesOfCopy(books, made, m_context.verbs.now())) {
        auto *pill = new StatusPill(Role::Act, clashWord(clash.kind));
        m_list->addWidget(pill, 0, Qt::AlignLeft);
        m_lines << clashWord(clash.kind);
        add(clash.what, TextStyle::Body, Role::Ink);
    }
    m_list->addStretch(1);
}

QString CopyDialog::previewText() const
{
    return m_lines.join(QLatin1Char('\n'));
}

void CopyDialog::write()
{
    const auto done = commands::addEventCopy(m_context.verbs, copy());
    if (!done) {
        m_notice->showProblem(done.message());
        return;
    }
    Q_EMIT made(done.value());
    accept();
}

} // namespace rickyard::views
