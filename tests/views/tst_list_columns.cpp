// Columns of lists in the room they have: the arithmetic, and a list in a window.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/records/column_fit.h"
#include "views/records/list_columns.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"

#include <QHeaderView>
#include <QMenu>
#include <QScrollBar>
#include <QTableView>
#include <QTest>

#include <random>

using namespace rickyard;
using namespace rickyard::views;

namespace {

int total(const QVector<int> &widths)
{
    int all = 0;
    for (int width : widths)
        all += width;
    return all;
}

} // namespace

class TstListColumns : public QObject
{
    Q_OBJECT

private slots:
    void widths_data()
    {
        QTest::addColumn<QVector<int>>("wanted");
        QTest::addColumn<QVector<int>>("least");
        QTest::addColumn<int>("room");
        QTest::addColumn<bool>("leaveOff");
        QTest::addColumn<QVector<int>>("widths");
        using V = QVector<int>;
        QTest::newRow("what is over goes to the first")
            << V{100, 80} << V{60, 60} << 300 << true << V{220, 80};
        QTest::newRow("the widest gives way")
            << V{200, 100, 80} << V{60, 60, 80} << 320 << true << V{140, 100, 80};
        QTest::newRow("figures stay whole")
            << V{200, 150} << V{60, 150} << 250 << true << V{100, 150};
        QTest::newRow("the last is left off")
            << V{100, 100, 100} << V{100, 100, 100} << 250 << true << V{150, 100, 0};
        QTest::newRow("never the first") << V{300, 90} << V{200, 90} << 100 << true << V{200, 0};
        QTest::newRow("none may be left off")
            << V{100, 100, 100} << V{100, 90, 100} << 250 << false << V{100, 90, 100};
        QTest::newRow("no columns") << V{} << V{} << 250 << true << V{};
    }
    void widths()
    {
        QFETCH(QVector<int>, wanted);
        QFETCH(QVector<int>, least);
        QFETCH(int, room);
        QFETCH(bool, leaveOff);
        QVector<ColumnWish> wishes;
        for (qsizetype i = 0; i < wanted.size(); ++i)
            wishes << ColumnWish{wanted.at(i), least.at(i)};
        QTEST(fittedWidths(wishes, room, leaveOff), "widths");
    }

    // Whatever the columns want: the room is filled and not overrun, no column falls below its
    // least, and a wider window takes nothing away.
    void fillsTheRoom()
    {
        std::mt19937 dice(20261126);
        const auto between = [&dice](int low, int high) {
            return std::uniform_int_distribution<int>(low, high)(dice);
        };
        for (int round = 0; round < 2000; ++round) {
            QVector<ColumnWish> wishes;
            for (int i = between(1, 9); i > 0; --i) {
                const int wanted = between(40, 260);
                wishes << ColumnWish{wanted, between(40, wanted)};
            }
            const int room = between(wishes.first().least, 1400);
            const QVector<int> widths = fittedWidths(wishes, room, true);
            QCOMPARE(total(widths), room);
            const auto kept = widths.size() - widths.count(0);
            for (qsizetype i = 0; i < widths.size(); ++i)
                QVERIFY(i < kept ? widths.at(i) >= wishes.at(i).least : widths.at(i) == 0);
            const QVector<int> wider = fittedWidths(wishes, room + between(1, 50), true);
            QVERIFY(wider.size() - wider.count(0) >= kept);
        }
    }

    void nothingIsCutAtTheRight()
    {
        const test::YardFixture yard;
        RecordList list(*yard.context, domain::TableId::Lot, QStringLiteral("wood"), QString());
        list.form().hide();
        list.resize(560, 400);
        list.setVisible(true);
        const QHeaderView *header = list.view().horizontalHeader();
        const auto fits = [&list, header] {
            return header->length() == list.view().viewport()->width() &&
                   list.view().horizontalScrollBar()->maximum() == 0;
        };
        QTRY_VERIFY(fits());
        const int few = header->count() - header->hiddenSectionCount();
        list.resize(1500, 400);
        QTRY_VERIFY(fits());
        QVERIFY(header->count() - header->hiddenSectionCount() > few);
    }

    void whatAPersonSetsStays()
    {
        const test::YardFixture yard;
        RecordList list(*yard.context, domain::TableId::Lot, QStringLiteral("wood"), QString());
        list.resize(900, 400);
        list.setVisible(true);
        QHeaderView *header = list.view().horizontalHeader();
        QTRY_VERIFY(header->sectionSize(0) > 0);
        const int before = header->sectionSize(0);
        const QPoint border(header->sectionViewportPosition(0) + before - 1, header->height() / 2);
        QTest::mousePress(header->viewport(), Qt::LeftButton, {}, border);
        QTest::mouseMove(header->viewport(), border + QPoint(20, 0));
        QTest::mouseMove(header->viewport(), border + QPoint(40, 0));
        QTest::mouseRelease(header->viewport(), Qt::LeftButton, {}, border + QPoint(40, 0));
        const int drawn = header->sectionSize(0);
        QVERIFY(drawn > before);
        list.resize(700, 400);
        QTest::qWait(0);
        QCOMPARE(header->sectionSize(0), drawn);
        // The next session finds it so, until it asks for the fitted ones.
        RecordList again(*yard.context, domain::TableId::Lot, QStringLiteral("wood"), QString());
        again.resize(700, 400);
        again.setVisible(true);
        QCOMPARE(again.view().horizontalHeader()->sectionSize(0), drawn);
        auto *columns = again.view().findChild<ListColumns *>();
        QVERIFY(columns != nullptr);
        QMenu menu;
        columns->fillMenu(menu);
        menu.actions().constLast()->trigger();
        QTRY_VERIFY(again.view().horizontalScrollBar()->maximum() == 0);
        QVERIFY(again.view().horizontalHeader()->sectionSize(0) != drawn);
    }
};

RICKYARD_TEST(TstListColumns)
#include "tst_list_columns.moc"
