#include "views/reports/service_history_paper.h"

#include "models/domain/answers/field_words.h"
#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "views/reports/report_words.h"
#include "views/upkeep/check_words.h"

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

class HistoryWriter
{
public:
    HistoryWriter(const Books &books, Pit pit, Instant now)
        : m_books(books), m_pit(std::move(pit)), m_now(now)
    {
        for (const Visit &visit : books.visits)
            if (visit.state == VisitState::Done && visit.start <= now &&
                books.tasks.value(visit.task).pit == m_pit.id)
                m_visits << visit;
        std::stable_sort(m_visits.begin(), m_visits.end(),
                         [](const Visit &a, const Visit &b) { return a.start < b.start; });
        for (const Finding &finding : books.findings)
            if (finding.pit == m_pit.id && finding.opened <= now)
                m_findings << finding;
        std::stable_sort(m_findings.begin(), m_findings.end(),
                         [](const Finding &a, const Finding &b) { return a.opened < b.opened; });
    }

    Paper write()
    {
        Paper paper;
        paper.title = reportWords("Service history: %1").arg(m_pit.name);
        paper.subtitle = reportWords("%1 · as recorded up to %2")
                             .arg(m_books.yard().name, reportDate(m_books, m_now));
        paper.foot = reportFoot(m_books);
        paper.sections << pit() << summary() << work() << values() << findings() << costs();
        if (const PaperSection section = ash(); !section.table.isEmpty())
            paper.sections << section;
        paper.sections << PaperSection{
            reportWords("What this is"),
            {reportWords("What the crew wrote down, and no more. It does not say that anything is "
                         "safe: who takes the pit over looks it over."),
             authorityCaution()}};
        return paper;
    }

private:
    [[nodiscard]] PaperSection pit() const
    {
        PaperSection section{reportWords("The pit")};
        const Row row = toRow(m_pit);
        const TableSpec &spec = specOf(TableId::Pit);
        for (int i = 0; i < spec.fields.size(); ++i) {
            const FieldSpec &field = spec.fields.at(i);
            if (field.kind == FieldKind::Typed || field.kind == FieldKind::Flag ||
                field.key == QLatin1String("name"))
                continue;
            const QString text =
                displayText(m_books, field, row.values.at(i), QLocale(QStringLiteral("en_US")));
            if (!text.isEmpty())
                section.lines << reportWords("%1: %2").arg(field.label, text);
        }
        if (m_pit.retired)
            section.lines << reportWords("Out of use.");
        return section;
    }

    [[nodiscard]] PaperSection summary() const
    {
        int cooks = 0;
        Duration burned;
        for (const Cook &cook : m_books.cooks)
            if (cook.pit == m_pit.id && cook.lit <= m_now && cook.fireOut) {
                ++cooks;
                burned += *cook.fireOut - cook.lit;
            }
        const auto in = [this](FindingState state) {
            return std::count_if(m_findings.begin(), m_findings.end(),
                                 [state](const Finding &f) { return f.state == state; });
        };
        PaperSection section{reportWords("In short")};
        section.lines << reportWords("Fires recorded: %1, together %2.")
                             .arg(cooks)
                             .arg(formatDuration(burned));
        section.lines << reportWords("Visits done: %1.").arg(m_visits.size());
        section.lines << reportWords("Findings: %1 open, %2 watched, %3 mended.")
                             .arg(in(FindingState::Open))
                             .arg(in(FindingState::Watched))
                             .arg(in(FindingState::Mended));
        return section;
    }

    [[nodiscard]] PaperSection work() const
    {
        PaperSection section{reportWords("Work done")};
        section.table.head = {reportWords("Day"), reportWords("Task"), reportWords("Found"),
                              reportWords("By"), reportWords("Cost")};
        section.table.widths = {14, 24, 36, 14, 12};
        section.table.figures = {4};
        for (const Visit &visit : m_visits) {
            QStringList found{visit.found, visit.note};
            found.removeAll(QString());
            section.table.rows << QStringList{
                reportDate(m_books, visit.start), reportTask(m_books, visit.task),
                found.join(QLatin1Char('\n')), visit.who, reportMoney(visit.cost)};
        }
        if (section.table.isEmpty())
            section.lines << reportWords("No visit is recorded.");
        return section;
    }

    [[nodiscard]] PaperSection values() const
    {
        PaperSection section{reportWords("Values read")};
        section.table.head = {reportWords("Day"),   reportWords("Task"),   reportWords("Where"),
                              reportWords("Value"), reportWords("Limits"), reportWords("Stands")};
        section.table.widths = {14, 26, 18, 12, 18, 12};
        section.table.figures = {3};
        QVector<CheckReading> readings;
        for (const CheckReading &reading : m_books.checkReadings)
            if (m_books.tasks.value(reading.task).pit == m_pit.id && reading.time <= m_now)
                readings << reading;
        std::stable_sort(readings.begin(), readings.end(), [](const auto &a, const auto &b) {
            return a.time != b.time ? a.time < b.time : a.point < b.point;
        });
        for (const CheckReading &reading : std::as_const(readings)) {
            const UpkeepTask task = m_books.tasks.value(reading.task);
            const CheckLimits limits = checkLimits(m_books, task);
            const double value = number(reading.value);
            const QString words = limits.words();
            section.table.rows << QStringList{reportDate(m_books, reading.time),
                                              task.name,
                                              pointName(task, reading.point),
                                              checkValueText(value, limits.unit),
                                              words,
                                              words.isEmpty()       ? QString()
                                              : limits.holds(value) ? reportWords("within")
                                                                    : reportWords("outside")};
        }
        if (section.table.isEmpty())
            section.lines << reportWords("No value is recorded.");
        else
            section.lines << reportWords("Limits are those of the task today.");
        return section;
    }

    [[nodiscard]] QString stateWords(const Finding &finding) const
    {
        switch (finding.state) {
        case FindingState::Open:
            return reportWords("open");
        case FindingState::Watched:
            return reportWords("watched");
        case FindingState::Nothing:
            return reportWords("looked at, nothing found");
        case FindingState::Mended:
            break;
        }
        const auto visit = m_books.visits.constFind(finding.mendedBy.value_or(0));
        if (visit == m_books.visits.constEnd())
            return reportWords("mended");
        return reportWords("mended %1: %2")
            .arg(reportDate(m_books, visit->start), reportTask(m_books, visit->task));
    }

    [[nodiscard]] PaperSection findings() const
    {
        PaperSection section{reportWords("Findings and mendings")};
        section.table.head = {reportWords("Opened"), reportWords("What"), reportWords("State")};
        section.table.widths = {14, 52, 34};
        for (const Finding &finding : m_findings)
            section.table.rows << QStringList{reportDate(m_books, finding.opened), finding.text,
                                              stateWords(finding)};
        if (section.table.isEmpty())
            section.lines << reportWords("No finding is recorded.");
        return section;
    }

    [[nodiscard]] PaperSection costs() const
    {
        PaperSection section{reportWords("Cost by year")};
        section.table.head = {reportWords("Year"), reportWords("Visits"), reportWords("Cost")};
        section.table.widths = {40, 30, 30};
        section.table.figures = {1, 2};
        struct Sum {
            int visits = 0;
            std::optional<Money> cost; // of those that say one
        };
        QMap<int, Sum> years;
        Sum all;
        for (const Visit &visit : m_visits) {
            for (Sum *sum : {&years[toLocal(m_books, visit.start).date().year()], &all}) {
                ++sum->visits;
                if (visit.cost)
                    sum->cost = sum->cost.value_or(Money()) + *visit.cost;
            }
        }
        const auto row = [&section](const QString &name, const Sum &sum) {
            section.table.rows << QStringList{name, QString::number(sum.visits),
                                              sum.cost ? reportMoney(sum.cost)
                                                       : reportWords("not recorded")};
        };
        for (auto year = years.constBegin(); year != years.constEnd(); ++year)
            row(QString::number(year.key()), year.value());
        if (years.isEmpty())
            section.lines << reportWords("No cost is recorded.");
        else
            row(reportWords("Together"), all);
        return section;
    }

    [[nodiscard]] PaperSection ash() const
    {
        PaperSection section{reportWords("Ash taken out")};
        section.table.head = {reportWords("Taken out"), reportWords("Can"), reportWords("Tipped"),
                              reportWords("Where")};
        section.table.widths = {22, 22, 22, 34};
        QVector<AshLoad> loads;
        for (const AshLoad &load : m_books.ashLoads)
            if (load.pit == m_pit.id && load.takenOut <= m_now)
                loads << load;
        std::stable_sort(loads.begin(), loads.end(), [](const AshLoad &a, const AshLoad &b) {
            return a.takenOut < b.takenOut;
        });
        for (const AshLoad &load : std::as_const(loads))
            section.table.rows << QStringList{reportDate(m_books, load.takenOut), load.can,
                                              load.tipped ? reportDate(m_books, *load.tipped)
                                                          : reportWords("still in the can"),
                                              load.where};
        return section;
    }

    const Books &m_books;
    Pit m_pit;
    Instant m_now;
    QVector<Visit> m_visits;
    QVector<Finding> m_findings;
};

} // namespace

Paper serviceHistoryPaper(const Books &books, RecordId pit, Instant now)
{
    const auto found = books.pits.constFind(pit);
    return found == books.pits.constEnd() ? Paper() : HistoryWriter(books, *found, now).write();
}

} // namespace rickyard::views
