#include "views/events/repeat_dialog.h"

#include "models/exchange/ics/recurrence.h"
#include "models/items/wording.h"
#include "models/workspace/commands/event_verbs.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/scroll_column.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QButtonGroup>
#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kUsualRepeats = 6;
constexpr int kClashesTold = 2; // of a day; the first ones say enough to choose by
constexpr int kYearsAhead = 20; // farther than any rule is meant
enum EndKind { ByCount, ByDay };

QLocale repeatLocale()
{
    return QLocale(QStringLiteral("en_US"));
}

QTimeZone zoneOfBooks(const Books &books)
{
    return zoneOf(wordingOf(books));
}

} // namespace

RepeatDialog::RepeatDialog(PageContext &pageContext, RecordId event, QWidget *parent)
    : QDialog(parent), m_context(pageContext), m_event(event)
{
    const Theme &look = theme(this);
    const Books &books = m_context.books();
    const Event record = books.events.value(event);
    m_first = items::toLocal(books, record.start).date();
    setWindowTitle(tr("Repeat %1").arg(record.name));
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(5), look.space(5), look.space(5), look.space(5));
    column->setSpacing(look.space(4));
    auto *title = new TextLabel(windowTitle(), TextStyle::Title, Role::Ink);
    title->setWordWrap(true);
    column->addWidget(title);
    column->addWidget(buildFields());
    m_notice = new NoticeBar(this);
    column->addWidget(m_notice);
    buildPreview(column);
    buildActs(column);
    resize(look.px(640), look.px(700));
    work();
}

QWidget *RepeatDialog::buildFields()
{
    const Theme &look = theme(this);
    auto *fields = new QWidget(this);
    auto *column = new QVBoxLayout(fields);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_kind = new QComboBox(fields);
    for (const RepeatKind kind : repeatKindsFor(m_first))
        m_kind->addItem(repeatKindWords(kind, m_first), static_cast<int>(kind));
    column->addWidget(new FieldRow(tr("How often"), m_kind, fields));
    m_own = new QLineEdit(fields);
    m_ownRow = new FieldRow(tr("Rule"), m_own, fields);
    m_ownRow->setHelp(tr("As iCalendar writes it, such as FREQ=MONTHLY;BYDAY=1FR,3FR. With COUNT "
                         "or UNTIL in it, the end below is not looked at."));
    m_ownRow->setVisible(false);
    column->addWidget(m_ownRow);
    column->addWidget(buildEnd());
    connect(m_kind, &QComboBox::currentIndexChanged, this, [this] {
        m_ownRow->setVisible(choice().kind == RepeatKind::Own);
        work();
    });
    connect(m_own, &QLineEdit::textChanged, this, [this] { work(); });
    return fields;
}

QWidget *RepeatDialog::buildEnd()
{
    const Theme &look = theme(this);
    auto *end = new QWidget(this);
    auto *row = new QHBoxLayout(end);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(2));
    m_end = new QButtonGroup(this);
    auto *byCount = new QRadioButton(tr("In all"), end);
    auto *byDay = new QRadioButton(tr("Until"), end);
    m_end->addButton(byCount, ByCount);
    m_end->addButton(byDay, ByDay);
    byCount->setChecked(true);
    m_count = new QSpinBox(end);
    m_count->setRange(2, commands::kMostRepeats + 1);
    m_count->setValue(kUsualRepeats);
    m_count->setSuffix(tr(" times"));
    m_count->setAccessibleName(tr("How many times in all"));
    m_until = new QDateEdit(m_first.addMonths(3), end);
    m_until->setLocale(repeatLocale());
    m_until->setDisplayFormat(QStringLiteral("ddd d MMM yyyy"));
    m_until->setCalendarPopup(true);
    m_until->setMinimumDate(m_first.addDays(1));
    m_until->setAccessibleName(tr("The last day"));
    row->addWidget(byCount);
    row->addWidget(m_count);
    row->addSpacing(look.space(4));
    row->addWidget(byDay);
    row->addWidget(m_until);
    row->addStretch(1);
    connect(m_end, &QButtonGroup::idToggled, this, [this](int, bool on) {
        if (on)
            work();
    });
    // Typing in a field chooses its way.
    connect(m_count, &QSpinBox::valueChanged, this, [this, byCount] {
        byCount->setChecked(true);
        work();
    });
    connect(m_until, &QDateEdit::dateChanged, this, [this, byDay] {
        byDay->setChecked(true);
        work();
    });
    return end;
}

void RepeatDialog::buildPreview(QVBoxLayout *column)
{
    const Theme &look = theme(this);
    m_sum = new TextLabel(QString(), TextStyle::Heading, Role::Ink);
    m_sum->setWordWrap(true);
    column->addWidget(m_sum);
    m_list = addScrollColumn(column, this, look.space(2));
}

void RepeatDialog::buildActs(QVBoxLayout *column)
{
    auto *row = new QHBoxLayout;
    row->setSpacing(theme(this).space(3));
    auto *cancel = new QPushButton(tr("Cancel"), this);
    cancel->setAutoDefault(false);
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
    m_make = new QPushButton(this);
    m_make->setProperty("role", "primary");
    m_make->setDefault(true);
    connect(m_make, &QPushButton::clicked, this, &RepeatDialog::write);
    row->addStretch(1);
    row->addWidget(cancel);
    row->addWidget(m_make);
    column->addLayout(row);
}

RepeatChoice RepeatDialog::choice() const
{
    RepeatChoice choice;
    choice.kind = static_cast<RepeatKind>(m_kind->currentData().toInt());
    choice.own = m_own->text();
    choice.byCount = m_end->checkedId() == ByCount;
    choice.count = m_count->value();
    choice.until = m_until->date();
    return choice;
}

QString RepeatDialog::rule() const
{
    return repeatRule(choice(), m_first, zoneOfBooks(m_context.books()));
}

Outcome<QVector<Instant>> RepeatDialog::starts(const QString &rule) const
{
    const Books &books = m_context.books();
    const QDateTime first = items::toLocal(books, books.events.value(m_event).start);
    // One more than can be written, and the first: what is too long is then refused and not cut.
    const auto times = exchange::occurrences(rule, first, m_first.addYears(kYearsAhead),
                                             commands::kMostRepeats + 2);
    if (!times)
        return times.problems();
    QVector<Instant> starts;
    for (const QDateTime &time : times.value())
        starts << Instant::ofSeconds(time.toSecsSinceEpoch());
    return starts;
}

void RepeatDialog::work()
{
    m_days.clear();
    m_ownRow->clearProblem();
    m_notice->dismiss();
    const QString text = rule();
    if (text.isEmpty()) {
        showDays();
        return;
    }
    const auto found = starts(text);
    if (!found) {
        if (choice().kind == RepeatKind::Own)
            m_ownRow->setProblem(found.message());
        else
            m_notice->showProblem(found.message());
        showDays();
        return;
    }
    m_days = seriesDays(m_context.books(), m_event, found.value(), m_context.verbs.now(),
                        m_context.answers.answers().upkeep);
    showDays();
}

void RepeatDialog::showDays()
{
    clearLayout(m_list);
    m_checks.clear();
    m_lines.clear();
    for (int i = 0; i < m_days.size(); ++i)
        addDay(i);
    m_list->addStretch(1);
    followChosen();
}

void RepeatDialog::addDay(int index)
{
    const Theme &look = theme(this);
    const SeriesDay &day = m_days.at(index);
    const QString when = repeatLocale().toString(items::toLocal(m_context.books(), day.start),
                                                 QStringLiteral("ddd d MMM yyyy, h:mm AP"));
    auto *block = new QWidget;
    auto *column = new QVBoxLayout(block);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.px(3));
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(3));
    auto *check = new QCheckBox(when, block);
    check->setChecked(!day.past && !day.there);
    check->setEnabled(!day.past && !day.there);
    connect(check, &QCheckBox::toggled, this, &RepeatDialog::followChosen);
    m_checks << check;
    row->addWidget(check);
    QString line = when;
    const auto pill = [&](Role role, const QString &word) {
        row->addWidget(new StatusPill(role, word, block));
        line += QString(QStringLiteral(": ") + word);
    };
    if (day.there)
        pill(Role::Info, tr("There already"));
    else if (day.past)
        pill(Role::Info, tr("Past, left out"));
    else if (!day.clashes.isEmpty())
        pill(Role::Act, clashWord(day.clashes.first().kind));
    row->addStretch(1);
    column->addLayout(row);
    const auto add = [&](const QString &text) {
        auto *what = new TextLabel(text, TextStyle::Caption, Role::InkMuted, block);
        what->setWordWrap(true);
        what->setContentsMargins(look.space(5), 0, 0, 0);
        column->addWidget(what);
    };
    for (const Clash &clash : day.clashes.mid(0, kClashesTold))
        add(clash.what);
    if (const auto more = day.clashes.size() - kClashesTold; more > 0)
        add(more == 1 ? tr("And 1 more.") : tr("And %1 more.").arg(more));
    m_lines << line;
    m_list->addWidget(block);
}

QStringList RepeatDialog::previewText() const
{
    return m_lines;
}

QVector<Instant> RepeatDialog::chosenStarts() const
{
    QVector<Instant> chosen;
    for (int i = 0; i < m_days.size(); ++i)
        if (m_checks.at(i)->isChecked())
            chosen << m_days.at(i).start;
    return chosen;
}

void RepeatDialog::followChosen()
{
    const auto chosen = chosenStarts().size();
    int clashing = 0;
    for (int i = 0; i < m_days.size(); ++i)
        clashing += m_checks.at(i)->isChecked() && !m_days.at(i).clashes.isEmpty() ? 1 : 0;
    const auto cooks = copyOf(m_context.books(), m_event, m_context.verbs.now()).cooks.size();
    QString words = chosen == 0   ? tr("No day to add.")
                    : chosen == 1 ? tr("1 more event")
                                  : tr("%1 more events").arg(chosen);
    if (chosen > 0) {
        if (cooks > 0)
            words += cooks * chosen == 1 ? tr(" with 1 planned cook")
                                         : tr(" with %1 planned cooks").arg(cooks * chosen);
        words += clashing == 0   ? tr(", no clash.")
                 : clashing == 1 ? tr(", 1 day with a clash.")
                                 : tr(", %1 days with a clash.").arg(clashing);
    }
    m_sum->setText(words);
    m_make->setEnabled(chosen > 0 && !m_context.readOnly());
    m_make->setText(chosen == 1 ? tr("Add 1 event") : tr("Add %1 events").arg(chosen));
    m_make->setAccessibleName(m_make->text());
}

void RepeatDialog::write()
{
    const auto done = commands::repeatEvent(m_context.verbs, m_event, chosenStarts(), rule());
    if (!done) {
        m_notice->showProblem(done.message());
        return;
    }
    Q_EMIT made(done.value());
    accept();
}

} // namespace rickyard::views
