#include "views/reports/checklist_paper.h"

#include "models/domain/quantities/units.h"
#include "views/reports/report_words.h"
#include "views/upkeep/check_words.h"
#include "views/upkeep/upkeep_words.h"

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kLinesForFindings = 4;

class ChecklistWriter
{
public:
    ChecklistWriter(const Books &books, Visit visit)
        : m_books(books), m_visit(std::move(visit)), m_task(books.tasks.value(m_visit.task)),
          m_end(m_visit.end.value_or(m_visit.start + m_task.work))
    {
    }

    Paper write()
    {
        Paper paper;
        paper.title = reportTask(m_books, m_visit.task);
        QStringList where{pitName(m_books, m_task.pit.value_or(0))};
        if (!m_task.target.isEmpty())
            where << m_task.target;
        where << spanText(m_books, m_visit.start, m_end);
        paper.subtitle = where.join(QStringLiteral(" · "));
        paper.foot = reportFoot(m_books);
        paper.sections << before();
        if (!m_task.cautions.isEmpty())
            paper.sections << PaperSection{
                reportWords("Take care"),
                m_task.cautions.split(QLatin1Char('\n'), Qt::SkipEmptyParts)};
        paper.sections << steps();
        if (m_task.reading != ReadingKind::None)
            paper.sections << readings();
        PaperSection found{reportWords("What was found")};
        if (!m_visit.found.isEmpty())
            found.lines << m_visit.found;
        found.ruled = m_visit.found.isEmpty() ? kLinesForFindings : kLinesForFindings / 2;
        paper.sections << found << signature();
        return paper;
    }

private:
    [[nodiscard]] PaperSection before() const
    {
        PaperSection section{reportWords("Before you start")};
        if (m_task.pit && m_task.coldBefore.base() > 0)
            section.lines << reportWords("Cold for %1: the fire is out by %2.")
                                 .arg(formatDuration(m_task.coldBefore),
                                      reportDayTime(m_books, m_visit.start - m_task.coldBefore));
        if (m_task.pit && m_task.cureAfter.base() > 0)
            section.lines << reportWords("Cures for %1 after it: no fire before %2.")
                                 .arg(formatDuration(m_task.cureAfter),
                                      reportDayTime(m_books, m_end + m_task.cureAfter));
        section.lines
            << (m_task.people == 1
                    ? reportWords("About %1 for one person.").arg(formatDuration(m_task.work))
                    : reportWords("About %1, by %2 people at once.")
                          .arg(formatDuration(m_task.work))
                          .arg(m_task.people));
        if (m_task.after)
            section.lines
                << reportWords("%1 comes before it.").arg(reportTaskAndPit(m_books, *m_task.after));
        if (m_task.daylight)
            section.lines << reportWords("By daylight.");
        if (m_task.dryWeather)
            section.lines << reportWords("In dry weather.");
        if (!m_task.tools.isEmpty())
            section.lines << reportWords("Have ready: %1.").arg(m_task.tools);
        return section;
    }

    [[nodiscard]] PaperSection steps() const
    {
        PaperSection section{reportWords("Steps"), stepsOf(m_task.steps)};
        section.boxes = true;
        if (section.lines.isEmpty())
            section.lines << m_task.name;
        for (const QString &number : m_visit.stepsDone.split(QLatin1Char(','), Qt::SkipEmptyParts))
            section.ticked << number.trimmed().toInt();
        return section;
    }

    [[nodiscard]] PaperSection readings() const
    {
        PaperSection section{reportWords("Values to write down")};
        const CheckLimits limits = checkLimits(m_books, m_task);
        const QString words = limits.words();
        for (int point = 1; point <= m_task.readingPoints; ++point) {
            PaperBlank blank{pointName(m_task, point), words.isEmpty() ? limits.unit : words};
            for (const CheckReading &reading : m_books.checkReadings)
                if (reading.visit == m_visit.id && reading.point == point)
                    blank.filled = checkValueText(number(reading.value), limits.unit);
            section.blanks << blank;
        }
        if (!limits.note.isEmpty())
            section.lines << reportWords("The limits are %1.").arg(limits.note);
        if (!words.isEmpty())
            section.lines << reportWords(
                "A value outside its limits is a finding: write it below.");
        return section;
    }

    [[nodiscard]] PaperSection signature() const
    {
        const bool begun =
            m_visit.state == VisitState::Started || m_visit.state == VisitState::Done;
        const bool done = m_visit.state == VisitState::Done;
        PaperSection section{reportWords("Done")};
        section.together = true;
        section.abreast = 2;
        section.blanks = {
            {reportWords("By"), {}, m_visit.who},
            {reportWords("Started"), {}, begun ? reportDayTime(m_books, m_visit.start) : QString()},
            {reportWords("Finished"), {}, done ? reportDayTime(m_books, m_end) : QString()},
            {reportWords("Cost"), {}, reportMoney(m_visit.cost)}};
        return section;
    }

    const Books &m_books;
    Visit m_visit;
    UpkeepTask m_task;
    Instant m_end;
};

} // namespace

Paper checklistPaper(const Books &books, RecordId visit)
{
    const auto found = books.visits.constFind(visit);
    return found == books.visits.constEnd() ? Paper() : ChecklistWriter(books, *found).write();
}

} // namespace rickyard::views
