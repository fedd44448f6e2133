#include "views/weather/weather_mapping_form.h"

#include "models/domain/quantities/units.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QVBoxLayout>

namespace rickyard::views {

using exchange::OutOfRange;
using exchange::TimeColumns;
using exchange::TimeZoneKind;
using exchange::WeatherMapping;

namespace {

QVBoxLayout *plainColumn(QWidget *owner)
{
    auto *column = new QVBoxLayout(owner);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(owner).space(3));
    return column;
}

} // namespace

WeatherMappingForm::WeatherMappingForm(QWidget *parent) : MappingForm(parent)
{
    auto *column = plainColumn(this);
    buildTime(column);
    buildQuantities(column);
    buildRecords(column);
    buildLayout(column, 10, tr("Marks of a missing value"),
                tr("With blanks between. An empty cell is always missing."));
    column->addStretch(1);
    setMapping({});
}

QComboBox *WeatherMappingForm::columnChoice(const QString &name)
{
    QComboBox *made = box(name, {}, 5);
    m_columnBoxes << made;
    return made;
}

void WeatherMappingForm::buildTime(QVBoxLayout *column)
{
    column->addWidget(new TextLabel(tr("Time"), TextStyle::BodyStrong));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(theme(this).space(3));
    m_timeWay = box(tr("Time stands in"));
    m_timeWay->addItem(tr("One column"));
    m_timeWay->addItem(tr("Year, month, day, hour"));
    grid->addWidget(row(QStringLiteral("timeColumns"), tr("Time stands in"), m_timeWay), 0, 0);
    makeZone();
    grid->addWidget(row(QStringLiteral("zoneKind"), tr("Where it says no offset"), m_zoneKind), 0,
                    1);
    column->addLayout(grid);
    column->addWidget(row(QStringLiteral("zone"), tr("Zone or offset"), m_zone));
    nameRow(QStringLiteral("offset"), rowOf(QStringLiteral("zone")));

    m_oneTime = new QWidget;
    auto *one = new QGridLayout(m_oneTime);
    one->setContentsMargins(0, 0, 0, 0);
    one->setHorizontalSpacing(theme(this).space(3));
    m_time = columnChoice(tr("Time column"));
    one->addWidget(row(QStringLiteral("timeColumn"), tr("Time column"), m_time), 0, 0);
    m_timeFormat = new QLineEdit;
    m_timeFormat->setPlaceholderText(tr("ISO 8601"));
    one->addWidget(row(QStringLiteral("timeFormat"), tr("Format, if not ISO"), m_timeFormat), 0, 1);
    column->addWidget(m_oneTime);
    m_partTimes = new QWidget;
    auto *parts = new QGridLayout(m_partTimes);
    parts->setContentsMargins(0, 0, 0, 0);
    parts->setHorizontalSpacing(theme(this).space(3));
    const QVector<QPair<QString, QString>> names{{QStringLiteral("yearColumn"), tr("Year")},
                                                 {QStringLiteral("monthColumn"), tr("Month")},
                                                 {QStringLiteral("dayColumn"), tr("Day")},
                                                 {QStringLiteral("hourColumn"), tr("Hour")},
                                                 {QStringLiteral("minuteColumn"), tr("Minute")}};
    for (int i = 0; i < names.size(); ++i) {
        m_parts << columnChoice(names.at(i).second);
        parts->addWidget(row(names.at(i).first, names.at(i).second, m_parts.last()), i / 2, i % 2);
    }
    column->addWidget(m_partTimes);
    connect(m_timeWay, &QComboBox::activated, this, &WeatherMappingForm::showTimeWay);
    connect(m_zoneKind, &QComboBox::activated, this, &WeatherMappingForm::showTimeWay);
}

void WeatherMappingForm::buildQuantities(QVBoxLayout *column)
{
    column->addWidget(
        new TextLabel(tr("Which column is what, in which unit"), TextStyle::BodyStrong));
    for (const exchange::WeatherQuantity &quantity : exchange::weatherQuantities()) {
        Line line;
        line.column = columnChoice(tr("%1: column").arg(quantity.label));
        line.unit = box(tr("%1: unit").arg(quantity.label));
        for (const domain::Unit &unit : domain::unitsOf(quantity.dimension))
            line.unit->addItem(unit.symbol.isEmpty() ? tr("fraction") : unit.symbol, unit.key);
        auto *pair = new QWidget;
        auto *across = new QHBoxLayout(pair);
        across->setContentsMargins(0, 0, 0, 0);
        across->setSpacing(theme(this).space(2));
        across->addWidget(line.column, 3);
        across->addWidget(line.unit, 1);
        line.row = row(QString(QStringLiteral("columns.") + quantity.key), quantity.label, pair);
        column->addWidget(line.row);
        m_quantities.insert(quantity.key, line);
    }
    nameRow(QStringLiteral("columns"),
            m_quantities.value(exchange::weatherQuantities().first().key).row);
}

void WeatherMappingForm::buildRecords(QVBoxLayout *column)
{
    column->addWidget(new TextLabel(tr("The records"), TextStyle::BodyStrong));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(theme(this).space(3));
    m_place = new QLineEdit;
    m_placeColumn = columnChoice(tr("Place column"));
    grid->addWidget(row(QStringLiteral("place"), tr("Place of every row"), m_place), 0, 0);
    grid->addWidget(row(QStringLiteral("placeColumn"), tr("or its column"), m_placeColumn), 0, 1);
    m_outOfRange = box(tr("A value that cannot be true"));
    m_outOfRange->addItem(tr("Refuses the file"));
    m_outOfRange->addItem(tr("Counts as missing"));
    grid->addWidget(
        row(QStringLiteral("outOfRange"), tr("A value that cannot be true"), m_outOfRange), 1, 0);
    m_normals = new QCheckBox(tr("Climate normals, not observations"));
    m_normals->setAccessibleName(m_normals->text());
    connect(m_normals, &QCheckBox::clicked, this, &WeatherMappingForm::changed);
    grid->addWidget(m_normals, 1, 1, Qt::AlignBottom);
    column->addLayout(grid);
}

void WeatherMappingForm::setHeader(const QStringList &header)
{
    m_header = header;
    const WeatherMapping kept = mapping();
    fillAll();
    setMapping(kept);
}

void WeatherMappingForm::fillAll()
{
    for (QComboBox *one : std::as_const(m_columnBoxes))
        fillColumns(one, tr("Not in this file"), m_header);
}

void WeatherMappingForm::setMapping(const WeatherMapping &mapping)
{
    m_mapping = mapping;
    if (m_columnBoxes.first()->count() == 0)
        fillAll();
    showShared(mapping);
    m_timeWay->setCurrentIndex(static_cast<int>(mapping.timeColumns));
    choose(m_time, mapping.timeColumn);
    m_timeFormat->setText(mapping.timeFormat);
    const QStringList parts{mapping.yearColumn, mapping.monthColumn, mapping.dayColumn,
                            mapping.hourColumn, mapping.minuteColumn};
    for (int i = 0; i < m_parts.size(); ++i)
        choose(m_parts.at(i), parts.at(i));
    for (auto it = m_quantities.cbegin(); it != m_quantities.cend(); ++it) {
        const exchange::QuantityColumn *column = mapping.columnFor(it.key());
        choose(it->column, column == nullptr ? QString() : column->column);
        if (column != nullptr)
            it->unit->setCurrentIndex(qMax(0, it->unit->findData(column->unit)));
    }
    m_place->setText(mapping.place);
    choose(m_placeColumn, mapping.placeColumn);
    m_normals->setChecked(mapping.asNormals);
    m_outOfRange->setCurrentIndex(static_cast<int>(mapping.outOfRange));
    showTimeWay();
}

WeatherMapping WeatherMappingForm::mapping() const
{
    WeatherMapping mapping = m_mapping;
    takeShared(mapping);
    mapping.timeColumns = static_cast<TimeColumns>(m_timeWay->currentIndex());
    mapping.timeColumn = m_time->currentData().toString();
    mapping.timeFormat = m_timeFormat->text().trimmed();
    mapping.yearColumn = m_parts.at(0)->currentData().toString();
    mapping.monthColumn = m_parts.at(1)->currentData().toString();
    mapping.dayColumn = m_parts.at(2)->currentData().toString();
    mapping.hourColumn = m_parts.at(3)->currentData().toString();
    mapping.minuteColumn = m_parts.at(4)->currentData().toString();
    mapping.columns.clear();
    for (const exchange::WeatherQuantity &quantity : exchange::weatherQuantities()) {
        const Line line = m_quantities.value(quantity.key);
        const QString column = line.column->currentData().toString();
        if (!column.isEmpty())
            mapping.columns.append({quantity.key, column, line.unit->currentData().toString()});
    }
    mapping.place = m_place->text().trimmed();
    mapping.placeColumn = m_placeColumn->currentData().toString();
    mapping.asNormals = m_normals->isChecked();
    mapping.outOfRange = static_cast<OutOfRange>(m_outOfRange->currentIndex());
    return mapping;
}

void WeatherMappingForm::showTimeWay()
{
    const bool one = m_timeWay->currentIndex() == static_cast<int>(TimeColumns::One);
    m_oneTime->setVisible(one);
    m_partTimes->setVisible(!one);
    m_zone->parentWidget()->setVisible(zoneKind() != TimeZoneKind::Utc);
    showZoneHint();
}

QComboBox *WeatherMappingForm::columnBox(const QString &quantity) const
{
    return m_quantities.value(quantity).column;
}

QComboBox *WeatherMappingForm::unitBox(const QString &quantity) const
{
    return m_quantities.value(quantity).unit;
}

} // namespace rickyard::views
