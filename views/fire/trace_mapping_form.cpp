#include "views/fire/trace_mapping_form.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"
#include "views/widgets/utc_offset.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateTimeEdit>
#include <QGridLayout>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace rickyard::views {

using exchange::ProbeLogMapping;
using exchange::ProbeTime;
using exchange::TimeZoneKind;

TraceMappingForm::TraceMappingForm(const QTimeZone &zone, QWidget *parent)
    : QWidget(parent), m_yardZone(zone)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(3));
    buildTime(column);
    buildProbes(column);
    buildFile(column);
    column->addStretch(1);
    setMapping({});
}

QComboBox *TraceMappingForm::box(const QString &name, const QStringList &choices)
{
    auto *made = new QComboBox;
    made->setAccessibleName(name);
    made->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    made->setMinimumContentsLength(8);
    made->addItems(choices);
    connect(made, &QComboBox::activated, this, &TraceMappingForm::changed);
    return made;
}

FieldRow *TraceMappingForm::row(const QString &key, const QString &label, QWidget *editor)
{
    auto *made = new FieldRow(label, editor);
    m_rows.insert(key, made);
    if (auto *line = qobject_cast<QLineEdit *>(editor)) {
        line->setAccessibleName(label);
        connect(line, &QLineEdit::textEdited, this, &TraceMappingForm::changed);
    }
    return made;
}

void TraceMappingForm::buildTime(QVBoxLayout *column)
{
    column->addWidget(new TextLabel(tr("When each row was"), TextStyle::BodyStrong));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(theme(this).space(3));
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    m_timeStyle = box(tr("Times are"), {tr("Date and time"), tr("Time of day"), tr("Elapsed")});
    m_time = box(tr("Time column"));
    m_date = box(tr("Date column"));
    m_format = new QLineEdit;
    m_format->setPlaceholderText(tr("ISO 8601"));
    m_scale = box(tr("A bare number counts"));
    m_scale->addItem(tr("Seconds"), 1);
    m_scale->addItem(tr("Minutes"), 60);
    m_scale->addItem(tr("Hours"), 3600);
    m_start = new QDateTimeEdit;
    m_start->setTimeSpec(Qt::UTC); // a wall clock: the yard's zone is applied to what is typed
    m_start->setDisplayFormat(QStringLiteral("yyyy-MM-dd HH:mm:ss"));
    m_start->setAccessibleName(tr("The log began"));
    connect(m_start, &QDateTimeEdit::dateTimeChanged, this, &TraceMappingForm::changed);
    m_zoneKind =
        box(tr("Time zone of the file"), {tr("UTC"), tr("Zone by name"), tr("Fixed offset")});
    m_zone = new QLineEdit;
    grid->addWidget(row(QStringLiteral("time"), tr("Times are"), m_timeStyle), 0, 0);
    grid->addWidget(row(QStringLiteral("timeColumn"), tr("Time column"), m_time), 0, 1);
    grid->addWidget(row(QStringLiteral("dateColumn"), tr("Date column"), m_date), 1, 0);
    grid->addWidget(row(QStringLiteral("timeFormat"), tr("Style, if not ISO"), m_format), 1, 1);
    grid->addWidget(row(QStringLiteral("elapsedScale"), tr("A bare number counts"), m_scale), 2, 0);
    grid->addWidget(row(QStringLiteral("start"), tr("The log began"), m_start), 2, 1);
    grid->addWidget(row(QStringLiteral("zoneKind"), tr("Where it says no offset"), m_zoneKind), 3,
                    0);
    grid->addWidget(row(QStringLiteral("zone"), tr("Zone or offset"), m_zone), 3, 1);
    m_rows.value(QStringLiteral("timeFormat"))->setHelp(tr("Such as M/d/yyyy h:mm:ss AP"));
    column->addLayout(grid);
    for (QComboBox *one : {m_timeStyle, m_zoneKind})
        connect(one, &QComboBox::activated, this, &TraceMappingForm::showWays);
}

void TraceMappingForm::buildProbes(QVBoxLayout *column)
{
    column->addWidget(new TextLabel(tr("Which columns are probes"), TextStyle::BodyStrong));
    m_probeHolder = new QWidget;
    m_probeGrid = new QGridLayout(m_probeHolder);
    m_probeGrid->setContentsMargins(0, 0, 0, 0);
    m_probeGrid->setHorizontalSpacing(theme(this).space(3));
    m_probeGrid->setVerticalSpacing(theme(this).space(2));
    m_probeGrid->setColumnStretch(0, 1);
    m_probeGrid->setColumnStretch(1, 1);
    column->addWidget(m_probeHolder);
    m_probeProblem = new TextLabel(QString(), TextStyle::Caption, Role::Act);
    m_probeProblem->setWordWrap(true);
    m_probeProblem->hide();
    column->addWidget(m_probeProblem);
    m_unit = box(tr("Temperatures are in"));
    m_unit->addItem(QStringLiteral("°F"), true);
    m_unit->addItem(QStringLiteral("°C"), false);
    column->addWidget(row(QStringLiteral("unit"), tr("Temperatures are in"), m_unit));
}

void TraceMappingForm::buildFile(QVBoxLayout *column)
{
    column->addWidget(new TextLabel(tr("How the file is written"), TextStyle::BodyStrong));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(theme(this).space(3));
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    m_separator = box(tr("Separator"));
    m_separator->addItem(tr("Comma"), QStringLiteral(","));
    m_separator->addItem(tr("Semicolon"), QStringLiteral(";"));
    m_separator->addItem(tr("Tab"), QStringLiteral("\t"));
    m_separator->addItem(tr("Bar |"), QStringLiteral("|"));
    m_decimal = box(tr("Decimal sign"));
    m_decimal->addItem(tr("Point 1.5"), QStringLiteral("."));
    m_decimal->addItem(tr("Comma 1,5"), QStringLiteral(","));
    m_headerRow = box(tr("Headers"));
    m_headerRow->addItem(tr("None"), 0);
    for (int i = 1; i <= 20; ++i)
        m_headerRow->addItem(tr("In line %1").arg(i), i);
    m_missing = new QLineEdit;
    grid->addWidget(row(QStringLiteral("separator"), tr("Separator"), m_separator), 0, 0);
    grid->addWidget(row(QStringLiteral("decimal"), tr("Decimal sign"), m_decimal), 0, 1);
    grid->addWidget(row(QStringLiteral("headerLine"), tr("Headers"), m_headerRow), 1, 0);
    FieldRow *missing = row(QStringLiteral("missing"), tr("Marks of no reading"), m_missing);
    missing->setHelp(tr("With blanks between. An empty cell is none anyway."));
    grid->addWidget(missing, 2, 0, 1, 2);
    column->addLayout(grid);
    for (QComboBox *one : {m_separator, m_headerRow})
        connect(one, &QComboBox::activated, this, &TraceMappingForm::layoutChanged);
}

void TraceMappingForm::setHeader(const QStringList &header)
{
    m_header = header;
    fillColumns();
}

void TraceMappingForm::fillColumns()
{
    for (QComboBox *one : {m_time, m_date}) {
        one->clear();
        one->addItem(one == m_date ? tr("None") : tr("Choose"), QString());
        for (qsizetype i = 0; i < m_header.size(); ++i)
            one->addItem(m_header.at(i).isEmpty() ? tr("Column %1").arg(i + 1) : m_header.at(i),
                         m_header.at(i));
    }
}

// A column that the file lacks stays chosen and says so, so that a saved mapping is not changed
// by looking at it.
void TraceMappingForm::choose(QComboBox *one, const QString &column)
{
    int at = column.isEmpty() ? 0 : one->findData(column);
    if (at < 0) {
        one->addItem(tr("%1 (not there)").arg(column), column);
        at = one->count() - 1;
    }
    one->setCurrentIndex(at);
}

// Every column but the times; those the mapping names are ticked.
void TraceMappingForm::fillProbes()
{
    clearLayout(m_probeGrid);
    m_probes.clear();
    QStringList columns = m_header;
    for (const exchange::ProbeColumn &probe : m_mapping.probes)
        if (!columns.contains(probe.column))
            columns << probe.column;
    for (const QString &column : std::as_const(columns)) {
        if (column.isEmpty() || column == m_mapping.timeColumn || column == m_mapping.dateColumn)
            continue;
        QString name = column;
        bool chosen = false;
        for (const exchange::ProbeColumn &probe : m_mapping.probes)
            if (probe.column == column) {
                chosen = true;
                name = probe.probe;
            }
        Probe probe;
        probe.column = column;
        probe.box =
            new QCheckBox(m_header.contains(column) ? column : tr("%1 (not there)").arg(column));
        probe.box->setAccessibleName(tr("%1 is a probe").arg(column));
        probe.box->setChecked(chosen);
        probe.name = new QLineEdit(name);
        probe.name->setAccessibleName(tr("Name of the probe in %1").arg(column));
        probe.name->setEnabled(chosen);
        connect(probe.box, &QCheckBox::toggled, probe.name, &QWidget::setEnabled);
        connect(probe.box, &QCheckBox::clicked, this, &TraceMappingForm::changed);
        connect(probe.name, &QLineEdit::textEdited, this, &TraceMappingForm::changed);
        const int at = static_cast<int>(m_probes.size());
        m_probeGrid->addWidget(probe.box, at, 0);
        m_probeGrid->addWidget(probe.name, at, 1);
        m_probes << probe;
    }
}

void TraceMappingForm::setMapping(const ProbeLogMapping &mapping)
{
    m_mapping = mapping;
    if (m_time->count() == 0)
        fillColumns();
    m_timeStyle->setCurrentIndex(static_cast<int>(mapping.time));
    choose(m_time, mapping.timeColumn);
    choose(m_date, mapping.dateColumn);
    m_format->setText(mapping.timeFormat);
    m_scale->setCurrentIndex(qMax(0, m_scale->findData(static_cast<int>(mapping.elapsedScale))));
    if (mapping.start) {
        const QSignalBlocker quiet(m_start);
        m_start->setDateTime(wallClock(*mapping.start));
    }
    m_zoneKind->setCurrentIndex(static_cast<int>(mapping.zoneKind));
    m_zone->setText(mapping.zoneKind == TimeZoneKind::FixedOffset
                        ? utcOffsetText(mapping.offsetSeconds)
                        : mapping.zone);
    fillProbes();
    m_unit->setCurrentIndex(mapping.fahrenheit ? 0 : 1);
    m_separator->setCurrentIndex(qMax(0, m_separator->findData(QString(mapping.separator))));
    m_decimal->setCurrentIndex(qMax(0, m_decimal->findData(QString(mapping.decimal))));
    m_headerRow->setCurrentIndex(qMax(0, m_headerRow->findData(mapping.headerLine)));
    QStringList marks = mapping.missing;
    marks.removeAll(QString());
    m_missing->setText(marks.join(QLatin1Char(' ')));
    showWays();
}

QDateTime TraceMappingForm::wallClock(domain::Instant time) const
{
    const QDateTime wall = QDateTime::fromSecsSinceEpoch(time.seconds(), m_yardZone);
    return QDateTime(wall.date(), wall.time(), Qt::UTC);
}

ProbeLogMapping TraceMappingForm::mapping() const
{
    ProbeLogMapping mapping = m_mapping;
    mapping.from.reset();
    mapping.to.reset();
    mapping.time = static_cast<ProbeTime>(m_timeStyle->currentIndex());
    mapping.timeColumn = m_time->currentData().toString();
    mapping.dateColumn = m_date->currentData().toString();
    mapping.timeFormat = m_format->text().trimmed();
    mapping.elapsedScale = m_scale->currentData().toInt();
    mapping.start.reset();
    if (mapping.time != ProbeTime::Clock) {
        mapping.start = domain::Instant::ofSeconds(
            QDateTime(m_start->date(), m_start->time(), m_yardZone).toSecsSinceEpoch());
        // A clock in autumn shows an hour twice: what was not typed stays what it was.
        if (m_mapping.start && m_start->dateTime() == wallClock(*m_mapping.start))
            mapping.start = m_mapping.start;
    }
    mapping.zoneKind = static_cast<TimeZoneKind>(m_zoneKind->currentIndex());
    if (mapping.zoneKind == TimeZoneKind::FixedOffset)
        mapping.offsetSeconds = utcOffsetOf(m_zone->text()).value_or(mapping.offsetSeconds);
    else if (mapping.zoneKind == TimeZoneKind::Zone)
        mapping.zone = m_zone->text().trimmed();
    mapping.probes.clear();
    for (const Probe &probe : m_probes)
        if (probe.box->isChecked() && probe.column != mapping.timeColumn &&
            probe.column != mapping.dateColumn)
            mapping.probes.append({probe.name->text().trimmed(), probe.column});
    mapping.fahrenheit = m_unit->currentData().toBool();
    mapping.separator = m_separator->currentData().toString().at(0);
    mapping.decimal = m_decimal->currentData().toString().at(0);
    mapping.headerLine = m_headerRow->currentData().toInt();
    mapping.missing =
        QStringList{QString()} + m_missing->text().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    return mapping;
}

// Only what matters to the way times are written is in sight.
void TraceMappingForm::showWays()
{
    const auto time = static_cast<ProbeTime>(m_timeStyle->currentIndex());
    m_rows.value(QStringLiteral("dateColumn"))->setVisible(time == ProbeTime::Clock);
    m_rows.value(QStringLiteral("timeFormat"))->setVisible(time != ProbeTime::Elapsed);
    m_rows.value(QStringLiteral("elapsedScale"))->setVisible(time == ProbeTime::Elapsed);
    m_rows.value(QStringLiteral("start"))->setVisible(time != ProbeTime::Clock);
    m_rows.value(QStringLiteral("zoneKind"))->setVisible(time != ProbeTime::Elapsed);
    const auto kind = static_cast<TimeZoneKind>(m_zoneKind->currentIndex());
    m_rows.value(QStringLiteral("zone"))
        ->setVisible(time != ProbeTime::Elapsed && kind != TimeZoneKind::Utc);
    m_zone->setPlaceholderText(kind == TimeZoneKind::Zone ? tr("America/Chicago") : tr("-06:00"));
}

QStringList TraceMappingForm::showProblems(const domain::Problems &problems)
{
    for (FieldRow *one : std::as_const(m_rows))
        one->clearProblem();
    m_probeProblem->hide();
    QStringList elsewhere;
    for (const domain::Problem &problem : problems) {
        FieldRow *one = m_rows.value(problem.field);
        if (problem.field == QLatin1String("probes")) {
            m_probeProblem->setText(problem.message);
            m_probeProblem->show();
        } else if (one == nullptr) {
            elsewhere << problem.message;
        } else {
            one->setProblem(problem.message);
        }
    }
    if (m_zoneKind->currentIndex() == static_cast<int>(TimeZoneKind::FixedOffset) &&
        !utcOffsetOf(m_zone->text()))
        m_rows.value(QStringLiteral("zone"))
            ->setProblem(tr("Expected an offset from UTC such as -06:00."));
    return elsewhere;
}

QCheckBox *TraceMappingForm::probeBox(const QString &column) const
{
    for (const Probe &probe : m_probes)
        if (probe.column == column)
            return probe.box;
    return nullptr;
}

QLineEdit *TraceMappingForm::probeName(const QString &column) const
{
    for (const Probe &probe : m_probes)
        if (probe.column == column)
            return probe.name;
    return nullptr;
}

} // namespace rickyard::views
