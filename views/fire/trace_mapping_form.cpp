#include "views/fire/trace_mapping_form.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"

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
    : MappingForm(parent), m_yardZone(zone)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(3));
    buildTime(column);
    buildProbes(column);
    buildLayout(column, 20, tr("Marks of no reading"),
                tr("With blanks between. An empty cell is none anyway."));
    column->addStretch(1);
    setMapping({});
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
    makeZone();
    grid->addWidget(row(QStringLiteral("time"), tr("Times are"), m_timeStyle), 0, 0);
    grid->addWidget(row(QStringLiteral("timeColumn"), tr("Time column"), m_time), 0, 1);
    grid->addWidget(row(QStringLiteral("dateColumn"), tr("Date column"), m_date), 1, 0);
    grid->addWidget(row(QStringLiteral("timeFormat"), tr("Style, if not ISO"), m_format), 1, 1);
    grid->addWidget(row(QStringLiteral("elapsedScale"), tr("A bare number counts"), m_scale), 2, 0);
    grid->addWidget(row(QStringLiteral("start"), tr("The log began"), m_start), 2, 1);
    grid->addWidget(row(QStringLiteral("zoneKind"), tr("Where it says no offset"), m_zoneKind), 3,
                    0);
    grid->addWidget(row(QStringLiteral("zone"), tr("Zone or offset"), m_zone), 3, 1);
    rowOf(QStringLiteral("timeFormat"))->setHelp(tr("Such as M/d/yyyy h:mm:ss AP"));
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

void TraceMappingForm::setHeader(const QStringList &header)
{
    m_header = header;
    fillTimes();
}

void TraceMappingForm::fillTimes()
{
    fillColumns(m_time, tr("Choose"), m_header);
    fillColumns(m_date, tr("None"), m_header);
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
        fillTimes();
    m_timeStyle->setCurrentIndex(static_cast<int>(mapping.time));
    choose(m_time, mapping.timeColumn);
    choose(m_date, mapping.dateColumn);
    m_format->setText(mapping.timeFormat);
    m_scale->setCurrentIndex(qMax(0, m_scale->findData(static_cast<int>(mapping.elapsedScale))));
    if (mapping.start) {
        const QSignalBlocker quiet(m_start);
        m_start->setDateTime(wallClock(*mapping.start));
    }
    fillProbes();
    m_unit->setCurrentIndex(mapping.fahrenheit ? 0 : 1);
    showShared(mapping);
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
    mapping.probes.clear();
    for (const Probe &probe : m_probes)
        if (probe.box->isChecked() && probe.column != mapping.timeColumn &&
            probe.column != mapping.dateColumn)
            mapping.probes.append({probe.name->text().trimmed(), probe.column});
    mapping.fahrenheit = m_unit->currentData().toBool();
    takeShared(mapping);
    return mapping;
}

// Only what matters to the way times are written is in sight.
void TraceMappingForm::showWays()
{
    const auto time = static_cast<ProbeTime>(m_timeStyle->currentIndex());
    rowOf(QStringLiteral("dateColumn"))->setVisible(time == ProbeTime::Clock);
    rowOf(QStringLiteral("timeFormat"))->setVisible(time != ProbeTime::Elapsed);
    rowOf(QStringLiteral("elapsedScale"))->setVisible(time == ProbeTime::Elapsed);
    rowOf(QStringLiteral("start"))->setVisible(time != ProbeTime::Clock);
    rowOf(QStringLiteral("zoneKind"))->setVisible(time != ProbeTime::Elapsed);
    rowOf(QStringLiteral("zone"))
        ->setVisible(time != ProbeTime::Elapsed && zoneKind() != TimeZoneKind::Utc);
    showZoneHint();
}

bool TraceMappingForm::showElsewhere(const domain::Problem &problem)
{
    if (problem.field != QLatin1String("probes"))
        return false;
    m_probeProblem->setText(problem.message);
    m_probeProblem->show();
    return true;
}

void TraceMappingForm::clearElsewhere()
{
    m_probeProblem->hide();
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
