#include "views/upkeep/readings_panel.h"

#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/readings.h"
#include "models/items/derived_model.h"
#include "models/items/wording.h"
#include "views/charts/chart_view.h"
#include "views/charts/nice_axis.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/check_words.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QHeaderView>
#include <QTableView>
#include <QVBoxLayout>
#include <QtCharts/QDateTimeAxis>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kSeriesShown = 6; // hues and markers there are

double chartTime(Instant t)
{
    return static_cast<double>(t.seconds()) * 1000.0;
}

QVector<CheckReading> readingsOf(const Books &books, RecordId task)
{
    QVector<CheckReading> readings;
    for (const CheckReading &reading : books.checkReadings)
        if (reading.task == task)
            readings << reading;
    std::stable_sort(readings.begin(), readings.end(),
                     [](const CheckReading &a, const CheckReading &b) {
                         return a.time != b.time ? a.time < b.time : a.point < b.point;
                     });
    return readings;
}

// One of the values of its last day lies outside the limits.
bool failedLast(const Books &books, const UpkeepTask &task)
{
    const QVector<CheckReading> readings = readingsOf(books, task.id);
    const CheckLimits limits = checkLimits(books, task);
    return std::any_of(readings.begin(), readings.end(), [&](const CheckReading &reading) {
        return readings.last().time - reading.time < Duration::ofBase(86400) &&
               !limits.holds(number(reading.value));
    });
}

// Short in keys and columns, where the task's name stands above.
QString pointLabel(const UpkeepTask &task, int point)
{
    return task.readingPoints > 1 ? ReadingsPanel::tr("point %1").arg(point)
                                  : pointName(task, point);
}

} // namespace

ReadingsPanel::ReadingsPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_tasks(new QComboBox(this)),
      m_summary(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_chart(new ChartView(tr("Readings of the task over time"), this)),
      m_table(new QTableView(this)),
      m_model(new items::DerivedModel(
          {{tr("When")}, {tr("What")}, {tr("Value"), true}, {tr("Against the limits")}}, this)),
      m_some(new QWidget(this)),
      m_none(new EmptyState(
          QStringLiteral("temperature"), tr("No task asks for readings yet"),
          tr("Under Tasks, choose a task and say what is read when it is done: ice point, boiling "
             "point, a paper test, plate thickness. Its values then stand here over time."),
          this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_none);
    column->addWidget(m_some, 1);
    auto *inner = new QVBoxLayout(m_some);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->setSpacing(look.space(3));
    auto *head = new QHBoxLayout;
    head->setSpacing(look.space(3));
    m_tasks->setAccessibleName(tr("Task whose readings are shown"));
    m_tasks->setMinimumWidth(look.px(280));
    head->addWidget(m_tasks);
    m_summary->setWordWrap(true);
    head->addWidget(m_summary, 1);
    inner->addLayout(head);
    auto *both = new QHBoxLayout;
    both->setSpacing(look.space(4));
    both->addWidget(m_chart, 3);
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Readings, newest first"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(look.rowHeight());
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setStretchLastSection(true);
    both->addWidget(m_table, 2);
    inner->addLayout(both, 1);
    connect(m_tasks, &QComboBox::activated, this, &ReadingsPanel::fill);
    connect(m_table, &QAbstractItemView::activated, this,
            [this](const QModelIndex &index) { Q_EMIT opened(m_model->linkAt(index.row())); });
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::CheckReading) ||
                    changes.touches(TableId::UpkeepTask) || changes.touches(TableId::Pit) ||
                    changes.touches(TableId::Yard))
                    refresh();
            });
    refresh();
}

void ReadingsPanel::refresh()
{
    const Books &books = m_context.books();
    QSet<RecordId> read;
    for (const CheckReading &reading : books.checkReadings)
        read.insert(reading.task);
    const RecordId shown = task();
    m_tasks->clear();
    // What failed last comes first, what was never read last.
    QVector<std::pair<int, RecordId>> order;
    for (const UpkeepTask &one : books.tasks) {
        if (read.contains(one.id))
            order << std::pair{failedLast(books, one) ? 0 : 1, one.id};
        else if (one.reading != ReadingKind::None && !one.retired)
            order << std::pair{2, one.id};
    }
    std::sort(order.begin(), order.end());
    for (const auto &[rank, id] : std::as_const(order)) {
        QString name = taskPhrase(books, id);
        name[0] = name.at(0).toUpper();
        m_tasks->addItem(name, id);
    }
    m_tasks->setCurrentIndex(std::max(0, m_tasks->findData(shown)));
    m_none->setVisible(m_tasks->count() == 0);
    m_some->setVisible(m_tasks->count() > 0);
    fill();
}

RecordId ReadingsPanel::task() const
{
    return m_tasks->currentData().toLongLong();
}

bool ReadingsPanel::showTask(RecordId task)
{
    const int at = m_tasks->findData(task);
    if (at < 0)
        return false;
    m_tasks->setCurrentIndex(at);
    fill();
    return true;
}

void ReadingsPanel::fill()
{
    const UpkeepTask record = m_context.books().tasks.value(task());
    const QVector<CheckReading> readings = readingsOf(m_context.books(), record.id);
    draw(record, readings);
    list(record, readings);
}

void ReadingsPanel::draw(const UpkeepTask &task, const QVector<CheckReading> &readings)
{
    m_chart->clearAll();
    const CheckLimits limits = checkLimits(m_context.books(), task);
    QString summary;
    if (readings.isEmpty()) {
        summary = tr("Nothing was read yet. Values are entered while the task is done.");
    } else {
        const auto outside =
            std::count_if(readings.begin(), readings.end(),
                          [&](const CheckReading &r) { return !limits.holds(number(r.value)); });
        summary = limits.words().isEmpty()
                      ? tr("%1 values; the task has no limits.").arg(readings.size())
                      : tr("%1 of %2 values lie outside %3.")
                            .arg(outside)
                            .arg(readings.size())
                            .arg(limits.words());
        if (!limits.note.isEmpty())
            summary += QString(QStringLiteral(" ") + tr("Limits %1.").arg(limits.note));
        // Where the plate's line meets its limit, and how sure that is.
        if (task.reading == ReadingKind::PlateThickness) {
            const PlateWear wear = plateWear(m_context.books(), task, m_context.verbs.now(),
                                             LocalTime(m_context.books().yard().timeZone));
            if (!wear.words.isEmpty())
                summary += QString(QLatin1Char('\n') + wear.words);
        }
    }
    m_summary->setText(summary);
    m_chart->setSummary(summary);
    m_chart->setVisible(!readings.isEmpty());
    if (readings.isEmpty())
        return;
    double low = number(readings.first().value);
    double high = low;
    for (const CheckReading &reading : readings) {
        low = std::min(low, number(reading.value));
        high = std::max(high, number(reading.value));
    }
    low = std::min(low, limits.low.value_or(low));
    high = std::max(high, limits.high.value_or(high));
    const double margin = std::max(0.08 * (high - low), 0.5);
    const double first = chartTime(readings.first().time);
    const double last = chartTime(readings.last().time);
    const double side = std::max(0.05 * (last - first), 5 * 86400e3);
    auto *days = new QDateTimeAxis;
    days->setFormat(QStringLiteral("d MMM yy"));
    days->setTickCount(4);
    days->setRange(QDateTime::fromMSecsSinceEpoch(std::llround(first - side)),
                   QDateTime::fromMSecsSinceEpoch(std::llround(last + side)));
    m_chart->addAxis(days, Qt::AlignBottom);
    m_chart->addAxis(niceAxis(low - margin, high + margin, 5), Qt::AlignLeft,
                     limits.unit.isEmpty() ? tr("Value") : tr("Value, %1").arg(limits.unit));
    const auto limit = [&](const std::optional<double> &at, const QString &name) {
        if (!at)
            return;
        auto *line = new QLineSeries;
        line->setName(name);
        line->replace(QList<QPointF>{{first - side, *at}, {last + side, *at}});
        m_chart->add(line, -1, SeriesPart::Limit);
    };
    limit(limits.low, tr("not below"));
    limit(limits.high, tr("not above"));
    // A point is a hue and a marker; beyond six they share the last.
    QMap<int, QList<QPointF>> points;
    for (const CheckReading &reading : readings)
        points[std::min(reading.point, kSeriesShown)]
            << QPointF(chartTime(reading.time), number(reading.value));
    for (auto it = points.cbegin(); it != points.cend(); ++it) {
        auto *marks = new QScatterSeries;
        marks->setName(it.key() == kSeriesShown && task.readingPoints > kSeriesShown
                           ? tr("points %1 to %2").arg(kSeriesShown).arg(task.readingPoints)
                           : pointLabel(task, it.key()));
        marks->replace(it.value());
        m_chart->add(marks, it.key() - 1, SeriesPart::Measured);
    }
    m_chart->setMarkersOnly(true);
    m_chart->setDescribe(
        [this, unit = limits.unit](const QAbstractSeries *series, const QPointF &point) {
            return tr("%1: %2\n%3")
                .arg(series->name(), checkValueText(point.y(), unit),
                     items::timeText(m_context.books(),
                                     Instant::ofSeconds(std::llround(point.x() / 1000.0)),
                                     QLocale(QStringLiteral("en_US"))));
        });
}

void ReadingsPanel::list(const UpkeepTask &task, const QVector<CheckReading> &readings)
{
    const CheckLimits limits = checkLimits(m_context.books(), task);
    QVector<items::DerivedRow> rows;
    for (auto it = readings.crbegin(); it != readings.crend(); ++it) {
        const double value = number(it->value);
        const bool holds = limits.holds(value);
        const QString verdict = limits.words().isEmpty() ? QString()
                                : holds                  ? tr("within")
                                                         : tr("outside %1").arg(limits.words());
        items::DerivedRow row;
        row.link =
            it->visit ? Link{TableId::Visit, *it->visit} : Link{TableId::CheckReading, it->id};
        const QDate day = items::toLocal(m_context.books(), it->time).date();
        row.cells = {
            {items::dayText(day, QLocale(QStringLiteral("en_US"))), it->time.seconds(), {}},
            {pointLabel(task, it->point), it->point, {}},
            {checkValueText(value, limits.unit), value, {}},
            {verdict, QVariant(), {}}};
        row.standing = holds ? Standing::Good : Standing::Act;
        rows << row;
    }
    m_model->setRows(rows);
    m_table->resizeColumnsToContents();
}

} // namespace rickyard::views
