// The papers of upkeep: their words against golden text, and how they lie on pages. Invented yard.
#include "tests/support/registry.h"
#include "views/reports/checklist_paper.h"
#include "views/reports/paper_layout.h"
#include "views/reports/paper_view.h"
#include "views/reports/service_history_paper.h"
#include "views/reports/week_plan_paper.h"

#include <QFile>
#include <QGuiApplication>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTest>
#include <QTextEdit>
#include <QTimeZone>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::views;

namespace {

// A page of A4 within margins of 18 mm.
const QSizeF kPage(493 * kPaperUnit, 740 * kPaperUnit);

Instant chicago(int year, int month, int day, int hour, int minute = 0)
{
    return Instant::ofSeconds(
        QDateTime(QDate(year, month, day), QTime(hour, minute), QTimeZone("America/Chicago"))
            .toSecsSinceEpoch());
}
const Instant kNow = chicago(2026, 11, 25, 9);

template <class R>
RecordId put(Shelf<R> &shelf, R record)
{
    record.id = shelf.isEmpty() ? 1 : shelf.lastKey() + 1;
    shelf.insert(record.id, record);
    return record.id;
}

// One pit with two tasks, a visit under way, one done that mended a finding, one booked; an event
// with a drive and a fire in the coming week, a late and a coming delivery.
struct PaperYard {
    Books books;
    UpkeepAnswer upkeep;
    RecordId pit = 0, gasket = 0, gauge = 0, underWay = 0;

    PaperYard()
    {
        Yard yard;
        yard.name = QStringLiteral("Sample yard");
        yard.invented = true;
        yard.elevation = Length::ofBase(609'600'000); // 2,000 ft
        books.yards.insert(1, yard);
        Pit p;
        p.name = QStringLiteral("Long Tom");
        p.diameter = Length::ofBase(762'000);
        p.length = Length::ofBase(2'438'400);
        p.plate = Length::ofBase(6'350);
        p.note = QStringLiteral("Bought second-hand");
        pit = put(books.pits, p);
        fillTasks();
        fillVisits();
        fillPlan();
    }

    void fillTasks()
    {
        UpkeepTask task;
        task.name = QStringLiteral("Gasket test");
        task.pit = pit;
        task.target = QStringLiteral("door gasket");
        task.everyDays = 30;
        task.work = Duration::ofBase(15 * 60);
        task.coldBefore = Duration::ofBase(12 * 3600);
        task.cureAfter = Duration::ofBase(24 * 3600);
        task.blocksLighting = true;
        task.tools = QStringLiteral("Strip of paper, lamp");
        task.steps = QStringLiteral("Close the door on a strip of paper and pull. Look for light "
                                    "round the edge. Note where it is loose.");
        task.cautions = QStringLiteral("The door is heavy: prop it.\nLocal code and the authority "
                                       "having jurisdiction decide.");
        task.reading = ReadingKind::PaperTest;
        task.readingUnit = QStringLiteral("of 3");
        task.readingLow = Plain::ofBase(2'000'000);
        task.readingPoints = 4;
        task.daylight = true;
        gasket = put(books.tasks, task);
        UpkeepTask second;
        second.name = QStringLiteral("Pit gauge check");
        second.pit = pit;
        second.everyDays = 30;
        second.work = Duration::ofBase(20 * 60);
        second.steps = QStringLiteral("Put the stem into boiling water.\nRead it.");
        second.reading = ReadingKind::BoilingPoint;
        second.readingUnit = QString::fromUtf8("°F");
        second.readingLow = Plain::ofBase(210'000'000);
        second.readingHigh = Plain::ofBase(214'000'000);
        gauge = put(books.tasks, second);
    }

    void fillVisits()
    {
        Visit visit;
        visit.task = gasket;
        visit.state = VisitState::Done;
        visit.start = chicago(2026, 10, 20, 18);
        visit.end = chicago(2026, 10, 20, 18, 30);
        visit.who = QStringLiteral("Sam");
        visit.cost = Money::ofBase(1250);
        visit.found = QStringLiteral("Loose at the hinge side");
        const RecordId done = put(books.visits, visit);
        visit.task = gauge;
        visit.start = chicago(2025, 12, 3, 17);
        visit.end = chicago(2025, 12, 3, 17, 20);
        visit.cost.reset();
        visit.found.clear();
        put(books.visits, visit);
        visit = Visit();
        visit.task = gasket;
        visit.state = VisitState::Started;
        visit.start = chicago(2026, 11, 25, 8);
        visit.stepsDone = QStringLiteral("0,2");
        visit.who = QStringLiteral("Sam");
        underWay = put(books.visits, visit);
        visit = Visit();
        visit.task = gauge;
        visit.start = chicago(2026, 11, 30, 18);
        visit.end = chicago(2026, 11, 30, 18, 20);
        put(books.visits, visit);
        CheckReading reading;
        reading.task = gasket;
        reading.visit = underWay;
        reading.time = kNow - Duration::ofBase(60);
        reading.point = 2;
        reading.value = Plain::ofBase(1'000'000);
        put(books.checkReadings, reading);
        reading.task = gauge;
        reading.visit.reset();
        reading.point = 1;
        reading.value = Plain::ofBase(208'500'000);
        reading.time = chicago(2025, 12, 3, 17, 10);
        put(books.checkReadings, reading);
        Finding finding;
        finding.pit = pit;
        finding.opened = chicago(2026, 10, 1, 9);
        finding.state = FindingState::Mended;
        finding.mendedBy = done;
        finding.text = QStringLiteral("Smoke at the door");
        put(books.findings, finding);
        finding.state = FindingState::Open;
        finding.mendedBy.reset();
        finding.opened = chicago(2026, 11, 20, 9);
        finding.text = QStringLiteral("Hinge bolt worn");
        put(books.findings, finding);
        AshLoad ash;
        ash.pit = pit;
        ash.takenOut = chicago(2026, 11, 21, 10);
        ash.can = QStringLiteral("Can 1");
        put(books.ashLoads, ash);
        Cook cook;
        cook.pit = pit;
        cook.lit = chicago(2026, 11, 1, 6);
        cook.fireOut = chicago(2026, 11, 1, 18, 30);
        put(books.cooks, cook);
    }

    void fillPlan()
    {
        Event event;
        event.name = QStringLiteral("Mill Field Supper");
        event.place = QStringLiteral("Mill Field (invented)");
        event.start = chicago(2026, 11, 28, 17);
        event.end = chicago(2026, 11, 28, 21);
        event.travel = Duration::ofBase(45 * 60);
        event.towed = true;
        event.covers = 80;
        const RecordId supper = put(books.events, event);
        event.name = QStringLiteral("Called off");
        event.state = EventState::Cancelled;
        put(books.events, event);
        PlannedCook cook;
        cook.pit = pit;
        cook.event = supper;
        cook.light = chicago(2026, 11, 27, 22);
        cook.length = Duration::ofBase(14 * 3600);
        cook.foods = QStringLiteral("Brisket");
        put(books.plannedCooks, cook);
        BusyTime busy;
        busy.summary = QStringLiteral("Dentist");
        busy.source = QStringLiteral("Sam");
        busy.uid = QStringLiteral("1");
        busy.start = chicago(2026, 11, 26, 10);
        busy.end = chicago(2026, 11, 26, 11);
        put(books.busyTimes, busy);
        Species oak;
        oak.name = QStringLiteral("Post oak");
        Supplier supplier;
        supplier.name = QStringLiteral("Dry Creek Wood (invented)");
        WoodOrder order;
        order.species = put(books.species, oak);
        order.supplier = put(books.suppliers, supplier);
        order.state = OrderState::Promised;
        order.unit = SellUnit::Cord;
        order.count = Plain::ofBase(2'000'000);
        order.promised = QDate(2026, 11, 20);
        put(books.orders, order);
        order.count.reset();
        order.volume = Volume::ofBase(1'812'278); // half a cord
        order.promised = QDate(2026, 12, 1);
        put(books.orders, order);
        TaskDue due;
        due.task = gasket;
        due.pit = pit;
        due.due = QDate(2026, 11, 19);
        due.overdue = true;
        upkeep.tasks << due;
        due.task = gauge;
        due.due = QDate(2026, 11, 27);
        due.overdue = false;
        upkeep.tasks << due;
        UpkeepTask tyres;
        tyres.name = QStringLiteral("Tyres, lights and hitch");
        tyres.blocksTowing = true;
        due.task = put(books.tasks, tyres);
        due.pit = 0;
        due.due = QDate(2026, 11, 20);
        due.overdue = true;
        upkeep.tasks << due;
        due.task = put(books.tasks, UpkeepTask());
        due.due = QDate(2026, 12, 2); // the day after the week
        upkeep.tasks << due;
    }
};

QString golden(const char *name)
{
    QFile file(QStringLiteral(RICKYARD_TEST_DATA "/reports/") + QLatin1String(name));
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

// What a page says above its foot.
QStringList bodyOf(const PaperPage &page)
{
    QStringList texts;
    for (const PaperMark &mark : page.marks)
        if (mark.kind == PaperMark::Kind::Text &&
            mark.place.bottom() < kPage.height() - 20 * kPaperUnit)
            texts << mark.text;
    return texts;
}

Paper longHistory(int visits)
{
    PaperYard yard;
    for (int i = 0; i < visits; ++i) {
        Visit visit;
        visit.task = i % 2 == 0 ? yard.gasket : yard.gauge;
        visit.state = VisitState::Done;
        visit.start = chicago(2020, 1, 1, 9) + Duration::ofBase(i * 86400LL * 5);
        visit.who = QStringLiteral("Crew");
        visit.cost = Money::ofBase(100 * i);
        visit.found = QStringLiteral("Visit-%1 was a long one, so that what was found fills more "
                                     "than one line of its cell and ends with End-%1")
                          .arg(i);
        put(yard.books.visits, visit);
    }
    return serviceHistoryPaper(yard.books, yard.pit, kNow);
}

} // namespace

class TstUpkeepPapers : public QObject
{
    Q_OBJECT

private slots:
    void words_data()
    {
        QTest::addColumn<QString>("text");
        PaperYard yard;
        QTest::newRow("checklist.txt") << paperText(checklistPaper(yard.books, yard.underWay));
        QTest::newRow("service_history.txt")
            << paperText(serviceHistoryPaper(yard.books, yard.pit, kNow));
        QTest::newRow("week_plan.txt") << paperText(weekPlanPaper(yard.books, yard.upkeep, kNow));
    }
    void words()
    {
        QFETCH(QString, text);
        const QStringList found = text.split(QLatin1Char('\n'));
        const QStringList expected = golden(QTest::currentDataTag()).split(QLatin1Char('\n'));
        for (qsizetype i = 0; i < std::max(found.size(), expected.size()); ++i)
            QCOMPARE(found.value(i), expected.value(i));
    }

    void missingRecordsGiveNoPaper()
    {
        PaperYard yard;
        QVERIFY(checklistPaper(yard.books, 99).sections.isEmpty());
        QVERIFY(serviceHistoryPaper(yard.books, 99, kNow).sections.isEmpty());
        Books empty;
        const Paper week = weekPlanPaper(empty, UpkeepAnswer(), kNow);
        QVERIFY(paperText(week).count(QStringLiteral("Nothing planned")) == 7);
    }

    void aLongHistoryLiesOnPages()
    {
        const Paper paper = longHistory(300);
        const QVector<PaperPage> pages = layOutPaper(paper, kPage);
        QVERIFY(pages.size() > 10);
        QVector<int> pageOfRow(300, -1);
        for (int p = 0; p < pages.size(); ++p) {
            const QString all = pages.at(p).texts().join(QLatin1Char(' '));
            QVERIFY(all.endsWith(QStringLiteral("page %1 of %2").arg(p + 1).arg(pages.size())));
            QVERIFY(all.contains(QStringLiteral("Sample yard (invented data)")));
            // Each row stands on one page with all of its lines.
            static const QRegularExpression begin(QStringLiteral("Visit-(\\d+)"));
            static const QRegularExpression end(QStringLiteral("End-(\\d+)"));
            QSet<int> begun;
            QSet<int> ended;
            for (auto i = begin.globalMatch(all); i.hasNext();)
                begun << i.next().captured(1).toInt();
            for (auto i = end.globalMatch(all); i.hasNext();)
                ended << i.next().captured(1).toInt();
            QCOMPARE(begun, ended);
            for (const int row : std::as_const(begun)) {
                QCOMPARE(pageOfRow.at(row), -1);
                pageOfRow[row] = p;
            }
            const QStringList body = bodyOf(pages.at(p));
            if (p > 0 && !begun.isEmpty() && !body.contains(QStringLiteral("Work done")))
                QCOMPARE(body.mid(0, 5), QStringList({QStringLiteral("Day"), QStringLiteral("Task"),
                                                      QStringLiteral("Found"), QStringLiteral("By"),
                                                      QStringLiteral("Cost")}));
            for (const PaperMark &mark : pages.at(p).marks) {
                QVERIFY(mark.place.top() >= 0 && mark.place.bottom() <= kPage.height());
                QVERIFY2(mark.place.left() >= 0 && mark.place.right() <= kPage.width() + 1,
                         qPrintable(mark.text));
            }
        }
        QVERIFY(!pageOfRow.contains(-1));
        QVERIFY(std::is_sorted(pageOfRow.begin(), pageOfRow.end()));
    }

    // Whatever the length before it, a heading has a line of its own section below it.
    void noHeadingStandsAlone()
    {
        QSet<qsizetype> seen;
        for (int visits = 0; visits < 60; ++visits) {
            const Paper paper = longHistory(visits);
            const QVector<PaperPage> pages = layOutPaper(paper, kPage);
            seen << pages.size();
            for (const PaperPage &page : pages) {
                const QStringList body = bodyOf(page);
                QVERIFY(!body.isEmpty());
                for (const PaperSection &section : paper.sections) {
                    QVERIFY2(body.last() != section.heading, qPrintable(section.heading));
                    // Neither does a table's head.
                    if (!section.table.isEmpty())
                        QVERIFY(body.last() != section.table.head.last());
                }
            }
        }
        QVERIFY(seen.size() > 2);
    }

    void linesNeverOverlap()
    {
        PaperYard yard;
        Paper paper = checklistPaper(yard.books, yard.underWay);
        PaperSection section{QStringLiteral("Long"),
                             {QString(QStringLiteral("word ")).repeated(900)}};
        section.blanks << PaperBlank{QString(QStringLiteral("label ")).repeated(30),
                                     QString(QStringLiteral("after ")).repeated(30)};
        section.table.head = {QStringLiteral("A"), QStringLiteral("B")};
        section.table.rows << QStringList{QString(QStringLiteral("cell ")).repeated(4000),
                                          QString(QLatin1Char('x')).repeated(300)};
        paper.sections << section;
        const QVector<PaperPage> pages = layOutPaper(paper, kPage);
        qsizetype words = 0;
        for (const PaperPage &page : pages)
            for (qsizetype i = 0; i < page.marks.size(); ++i) {
                const PaperMark &a = page.marks.at(i);
                words += a.text.count(QStringLiteral("cell"));
                QVERIFY(a.place.bottom() <= kPage.height());
                for (qsizetype j = i + 1; j < page.marks.size(); ++j) {
                    const PaperMark &b = page.marks.at(j);
                    const bool both = a.kind == PaperMark::Kind::Text &&
                                      b.kind == PaperMark::Kind::Text && !a.text.isEmpty() &&
                                      !b.text.isEmpty();
                    QVERIFY2(!both || !a.place.intersects(b.place),
                             qPrintable(QString(a.text + QLatin1Char('|') + b.text)));
                }
            }
        QCOMPARE(words, 4000);
    }

    void pdfHasThePages()
    {
        QTemporaryDir folder;
        const QString path = folder.filePath(QStringLiteral("history.pdf"));
        const Paper paper = longHistory(100);
        QVERIFY(!writePdf(paper, path));
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QString pdf = QString::fromLatin1(file.readAll());
        static const QRegularExpression page(QStringLiteral("/Type\\s*/Page[^s]"));
        const qsizetype pages = pdf.count(page);
        QVERIFY(pages > 3);
        // As many as on an A4 page of these margins, give or take the rounding of its size.
        QVERIFY(std::abs(pages - layOutPaper(paper, kPage).size()) <= 1);
        QVERIFY(writePdf(paper, QStringLiteral("/no/such/folder/history.pdf")));
    }

    void theScreenShowsAllOfIt()
    {
        PaperYard yard;
        for (const Paper &paper : {checklistPaper(yard.books, yard.underWay),
                                   serviceHistoryPaper(yard.books, yard.pit, kNow),
                                   weekPlanPaper(yard.books, yard.upkeep, kNow)}) {
            PaperView view(paper);
            QCOMPARE(view.text(), paperText(paper));
            const auto *body = view.findChild<QTextEdit *>();
            QVERIFY(body != nullptr);
            QVERIFY(body->isReadOnly());
            QCOMPARE(body->accessibleName(), paper.title);
            const QString shown = body->toPlainText();
            QVERIFY(shown.contains(paper.title));
            for (const PaperSection &section : paper.sections) {
                QVERIFY(shown.contains(section.heading));
                for (const QString &line : section.lines)
                    QVERIFY2(shown.contains(line), qPrintable(line));
                for (const QStringList &row : section.table.rows)
                    for (const QString &cell : row)
                        QVERIFY2(shown.contains(cell), qPrintable(cell));
                for (const PaperBlank &blank : section.blanks)
                    QVERIFY(shown.contains(blank.label));
            }
        }
    }
};

RICKYARD_TEST(TstUpkeepPapers)
#include "tst_upkeep_papers.moc"
