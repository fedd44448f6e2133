#include "views/upkeep/reading_rows.h"

#include "models/domain/upkeep/readings.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/check_words.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

ReadingRows::ReadingRows(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_grid(new QGridLayout),
      m_limits(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted, this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_limits->setWordWrap(true);
    column->addWidget(m_limits);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(look.space(3));
    m_grid->setVerticalSpacing(look.space(1));
    m_grid->setColumnStretch(2, 1);
    column->addLayout(m_grid);
}

void ReadingRows::showVisit(RecordId visit)
{
    const Visit record = m_context.books().visits.value(visit);
    const UpkeepTask task = m_context.books().tasks.value(record.task);
    m_visit = visit;
    m_task = task.id;
    setVisible(task.reading != ReadingKind::None);
    if (task.reading == ReadingKind::None) {
        clearLayout(m_grid);
        m_rows.clear();
        return;
    }
    build(task);
    for (const CheckReading &reading : m_context.books().checkReadings)
        if (reading.visit == visit && reading.point >= 1 && reading.point <= count())
            m_rows.at(reading.point - 1)
                .field->setText(checkValueText(number(reading.value), QString()));
    for (int point = 1; point <= count(); ++point)
        judge(point);
}

void ReadingRows::build(const UpkeepTask &task)
{
    const Theme &look = theme(this);
    clearLayout(m_grid);
    m_rows.clear();
    const CheckLimits limits = checkLimits(m_context.books(), task);
    QString text = limits.words().isEmpty() ? tr("No limits are set on the task.")
                                            : tr("Expected: %1").arg(limits.words());
    if (!limits.note.isEmpty())
        text += QString(QStringLiteral(", ") + limits.note);
    m_limits->setText(text);
    for (int point = 1; point <= std::max(1, task.readingPoints); ++point) {
        const QString name = pointName(task, point);
        auto *label = new TextLabel(name, TextStyle::Label, Role::InkMuted, this);
        auto *field = new UnitLineEdit(task.readingUnit, this);
        field->setAccessibleName(name);
        field->setAccessibleDescription(text);
        field->setMaximumWidth(look.px(150));
        field->setReadOnly(m_context.readOnly());
        auto *verdict = new StatusPill(Role::Info, QString(), this);
        label->setBuddy(field);
        m_grid->addWidget(label, point - 1, 0);
        m_grid->addWidget(field, point - 1, 1);
        m_grid->addWidget(verdict, point - 1, 2, Qt::AlignLeft | Qt::AlignVCenter);
        m_rows.append({field, verdict});
        connect(field, &QLineEdit::textEdited, this, [this, point] { judge(point); });
        connect(field, &QLineEdit::editingFinished, this, [this, point] { keep(point); });
    }
}

void ReadingRows::judge(int point)
{
    const Line &line = m_rows.at(point - 1);
    const UpkeepTask task = m_context.books().tasks.value(m_task);
    const CheckLimits limits = checkLimits(m_context.books(), task);
    const QString text = line.field->text().trimmed();
    const auto value = typedNumber(text, task.readingUnit);
    if (text.isEmpty())
        line.verdict->setStatus(Role::Info, QString());
    else if (!value)
        line.verdict->setStatus(Role::Act, tr("A number is expected"));
    else if (limits.words().isEmpty())
        line.verdict->setStatus(Role::Info, QString());
    else if (limits.holds(*value))
        line.verdict->setStatus(Role::Good, tr("Within"));
    else
        line.verdict->setStatus(Role::Act, tr("Outside"));
    line.field->setAccessibleDescription(
        QString(line.verdict->word() + QStringLiteral(" ") + m_limits->text()).trimmed());
    Q_EMIT judged();
}

bool ReadingRows::keep(int point)
{
    if (m_context.readOnly() || m_visit == 0)
        return true;
    const Line &line = m_rows.at(point - 1);
    const QString unit = m_context.books().tasks.value(m_task).readingUnit;
    const QString text = line.field->text().trimmed();
    const auto value = typedNumber(text, unit);
    if (!text.isEmpty() && !value)
        return false;
    const auto plain = value ? std::optional<Plain>(Plain::rounded(*value * 1e6)) : std::nullopt;
    const auto done = commands::noteReading(m_context.verbs, m_visit, point, plain);
    if (!done)
        m_context.refuse(done.problems());
    return done.ok();
}

bool ReadingRows::settle()
{
    bool fine = true;
    for (int point = 1; point <= count(); ++point)
        fine = keep(point) && fine;
    return fine;
}

QString ReadingRows::failure() const
{
    const UpkeepTask task = m_context.books().tasks.value(m_task);
    QVector<CheckReading> readings;
    for (int point = 1; point <= count(); ++point) {
        const auto value = typedNumber(m_rows.at(point - 1).field->text(), task.readingUnit);
        if (!value)
            continue;
        CheckReading reading;
        reading.task = m_task;
        reading.point = point;
        reading.value = Plain::rounded(*value * 1e6);
        readings << reading;
    }
    return judgeReadings(m_context.books(), task, readings).finding;
}

} // namespace rickyard::views
