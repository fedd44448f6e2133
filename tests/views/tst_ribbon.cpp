// The ribbon: what it gathers, where it puts it, and that pointer and keyboard reach every item.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/ribbon/ribbon.h"
#include "views/ribbon/ribbon_items.h"

#include <QSignalSpy>
#include <QTest>

#include <algorithm>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::test;
using namespace rickyard::views;

namespace {

RibbonItem barOf(Lane lane, QDate day, int hour, int length, const QString &label, RecordId id)
{
    RibbonItem item;
    item.link = {TableId::Event, id};
    item.lane = lane;
    item.start = QDateTime(day, QTime(hour, 0), Qt::UTC);
    item.end = item.start.addSecs(length * 3600);
    item.label = label;
    item.detail = label;
    return item;
}

RibbonMetrics plainMetrics()
{
    RibbonMetrics m;
    m.left = 100;
    m.width = 840; // 20 a day over 42 days
    m.top = 20;
    m.row = 20;
    m.laneGap = 4;
    m.mark = 16;
    m.gap = 5;
    m.leastLabel = 60;
    m.textWidth = [](const QString &text) { return 10.0 * static_cast<double>(text.size()); };
    return m;
}

const RibbonItem *find(const QVector<RibbonItem> &items, Lane lane)
{
    for (const RibbonItem &item : items)
        if (item.lane == lane)
            return &item;
    return nullptr;
}

} // namespace

class TstRibbon : public QObject
{
    Q_OBJECT

    const QDate m_today{2026, 11, 25};

private slots:
    void daysAreColumns()
    {
        const RibbonMetrics m = plainMetrics();
        QCOMPARE(ribbonX(QDateTime(m_today, QTime(0, 0), Qt::UTC), m_today, 42, m), 100.0);
        QCOMPARE(ribbonX(QDateTime(m_today.addDays(2), QTime(12, 0), Qt::UTC), m_today, 42, m),
                 150.0);
        QCOMPARE(ribbonX(QDateTime(m_today.addDays(90), QTime(12, 0), Qt::UTC), m_today, 42, m),
                 940.0);
    }

    void overlappingItemsGoBelowEachOther()
    {
        const QVector<RibbonItem> items{
            barOf(Lane::Events, m_today.addDays(2), 0, 24, QStringLiteral("One"), 1),
            barOf(Lane::Events, m_today.addDays(2), 12, 24, QStringLiteral("Two"), 2),
            barOf(Lane::Events, m_today.addDays(20), 0, 24, QStringLiteral("Three"), 3),
            barOf(Lane::Cooks, m_today.addDays(2), 0, 12, QString(), 4)};
        const RibbonLayout layout = layOutRibbon(items, m_today, 42, plainMetrics());
        QCOMPARE(layout.lanes.size(), 2);
        QCOMPARE(layout.lanes.first().lane, Lane::Cooks);
        QVERIFY(layout.places.at(1).bar.top() > layout.places.at(0).bar.top());
        QCOMPARE(layout.places.at(2).bar.top(), layout.places.at(0).bar.top());
        QVERIFY(layout.places.at(3).bar.top() < layout.places.at(0).bar.top());
        for (int i = 0; i < items.size(); ++i)
            for (int j = i + 1; j < items.size(); ++j)
                QVERIFY(!layout.places.at(i).hit.intersects(layout.places.at(j).hit));
        // 12 hours are 10 wide, and a bar is never thinner than a mark.
        QCOMPARE(layout.places.at(3).bar.width(), 16.0);
        QCOMPARE(layout.places.at(0).bar.width(), 20.0);
    }

    void aLabelEndsBeforeTheNextItemAndTurnsAtTheEdge()
    {
        const QString longName = QStringLiteral("A very long name of an event");
        const QVector<RibbonItem> items{
            barOf(Lane::Events, m_today.addDays(2), 0, 24, longName, 1),
            barOf(Lane::Events, m_today.addDays(9), 0, 24, longName, 2),
            barOf(Lane::Wood, m_today.addDays(41), 0, 24, QStringLiteral("Edge"), 3)};
        const RibbonLayout layout = layOutRibbon(items, m_today, 42, plainMetrics());
        QCOMPARE(layout.places.at(0).bar.top(), layout.places.at(1).bar.top());
        QVERIFY(layout.places.at(0).label.right() <= layout.places.at(1).bar.left());
        QVERIFY(layout.places.at(0).label.width() > 50);
        QVERIFY(!layout.places.at(2).label.isEmpty());
        QVERIFY(layout.places.at(2).label.right() < layout.places.at(2).bar.left());
        QVERIFY(layout.places.at(2).bar.right() <= 940.5);
    }

    void gathersTheYard()
    {
        YardFixture yard;
        WoodOrder order;
        order.supplier = yard.supplier;
        order.species = yard.oak;
        order.state = OrderState::Promised;
        order.volume = volumeFromCubicFeet(64);
        order.ordered = QDate(2026, 11, 20);
        order.promised = QDate(2026, 12, 1);
        QVERIFY(yard.verbs->add(order));
        const Answers answers = answersOf(yard.workspace->books(), yard.now);
        const auto items = ribbonItems(yard.workspace->books(), answers, m_today, 42);
        const RibbonItem *cook = find(items, Lane::Cooks);
        QVERIFY(cook != nullptr);
        QCOMPARE(cook->link.id, yard.plannedCook);
        // 4:00 to 18:00 on the yard's clock, ten days on.
        QCOMPARE(cook->start, QDateTime(QDate(2026, 12, 5), QTime(4, 0), Qt::UTC));
        QCOMPARE(cook->end, QDateTime(QDate(2026, 12, 5), QTime(18, 0), Qt::UTC));
        QCOMPARE(cook->hue, 1);
        QCOMPARE(cook->mark, QStringLiteral("S"));
        const RibbonItem *event = find(items, Lane::Events);
        QVERIFY(event != nullptr);
        QCOMPARE(event->label, QStringLiteral("Mill Field Supper (invented)"));
        const RibbonItem *wood = find(items, Lane::Wood);
        QVERIFY(wood != nullptr);
        bool delivery = false;
        for (const RibbonItem &item : items)
            delivery = delivery || (item.lane == Lane::Wood &&
                                    item.start.date() == order.promised && !item.tentative);
        QVERIFY(delivery);
        // Ten cooks since August at one each five: overdue, at today, with a shape.
        const RibbonItem *due = find(items, Lane::Due);
        QVERIFY(due != nullptr);
        QCOMPARE(due->start.date(), m_today);
        QCOMPARE(due->standing, Standing::Act);
        const RibbonItem *visit = find(items, Lane::Upkeep);
        QVERIFY(visit != nullptr);
        QVERIFY(visit->tentative);
        QVERIFY(std::is_sorted(items.begin(), items.end(),
                               [](const auto &a, const auto &b) { return a.start < b.start; }));
    }

    void whatIsOutsideTheDaysOrCancelledIsLeftOut()
    {
        YardFixture yard;
        Event event = yard.workspace->books().events.value(yard.event);
        event.state = EventState::Cancelled;
        QVERIFY(yard.verbs->edit(event));
        const auto items = [&](int days) {
            return ribbonItems(yard.workspace->books(),
                               answersOf(yard.workspace->books(), yard.now), m_today, days);
        };
        QVERIFY(find(items(42), Lane::Events) == nullptr);
        QVERIFY(find(items(42), Lane::Cooks) == nullptr);
        event.state = EventState::Booked;
        QVERIFY(yard.verbs->edit(event));
        QVERIFY(find(items(42), Lane::Events) != nullptr);
        QVERIFY(find(items(5), Lane::Events) == nullptr);
    }

    // While the answers are worked out nobody knows what is planned.
    void nothingIsSaidBeforeItIsKnown()
    {
        Ribbon ribbon;
        QVERIFY(ribbon.accessibleDescription().startsWith(QStringLiteral("Reading the books")));
        ribbon.setItems(m_today, 42, {});
        QVERIFY(ribbon.accessibleDescription().startsWith(QStringLiteral("Nothing planned")));
    }

    void pointerAndKeysOpen()
    {
        Ribbon ribbon;
        ribbon.resize(1000, 200);
        ribbon.setItems(
            m_today, 42,
            {barOf(Lane::Cooks, m_today.addDays(2), 0, 24, QStringLiteral("One"), 1),
             barOf(Lane::Events, m_today.addDays(4), 12, 24, QStringLiteral("<b>Two</b>"), 2),
             barOf(Lane::Cooks, m_today.addDays(20), 0, 24, QStringLiteral("Three"), 3)});
        ribbon.resize(1000, ribbon.heightForWidth(1000));
        ribbon.show();
        QVERIFY(!ribbon.accessibleName().isEmpty());
        QSignalSpy opened(&ribbon, &Ribbon::opened);
        QTest::mouseClick(&ribbon, Qt::LeftButton, {}, ribbon.rectOf(1).center().toPoint());
        QCOMPARE(opened.size(), 1);
        QCOMPARE(opened.at(0).at(0).value<Link>().id, 2);
        // Beside the items nothing opens.
        QTest::mouseClick(&ribbon, Qt::LeftButton, {}, QPoint(ribbon.width() - 3, 2));
        QCOMPARE(opened.size(), 1);
        QTest::keyClick(&ribbon, Qt::Key_Home);
        QCOMPARE(ribbon.current(), 0);
        QTest::keyClick(&ribbon, Qt::Key_Right);
        QVERIFY(ribbon.accessibleDescription().contains(QStringLiteral("<b>Two</b>")));
        QTest::keyClick(&ribbon, Qt::Key_Right);
        QTest::keyClick(&ribbon, Qt::Key_Right); // stays at the last
        QTest::keyClick(&ribbon, Qt::Key_Return);
        QCOMPARE(opened.at(1).at(0).value<Link>().id, 3);
        QTest::keyClick(&ribbon, Qt::Key_Down);
        QCOMPARE(ribbon.current(), 1);
        QTest::keyClick(&ribbon, Qt::Key_Up);
        QVERIFY(ribbon.current() != 1);
    }

    void pitsWithOneInitialAreToldApart()
    {
        Books books;
        const auto add = [&books](RecordId id, const char *name) {
            Pit pit;
            pit.id = id;
            pit.name = QString::fromUtf8(name);
            books.pits.insert(id, pit);
        };
        add(1, "Long Tom");
        QCOMPARE(pitMark(books, 1), QStringLiteral("L"));
        add(2, "Little Ann");
        QCOMPARE(pitMark(books, 1), QStringLiteral("LT"));
        QCOMPARE(pitMark(books, 2), QStringLiteral("LA"));
        add(3, "Lean Theo");
        QCOMPARE(pitMark(books, 1), QStringLiteral("L1"));
        QCOMPARE(pitMark(books, 3), QStringLiteral("L3"));
    }
};

RICKYARD_TEST(TstRibbon)
#include "tst_ribbon.moc"
