// A probe's log brought into a cook in the window, with keys and mouse. All files are invented.
#include "models/domain/fire/trace_codec.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/fire/cook_detail.h"
#include "views/fire/cook_probes.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/probe_facts.h"
#include "views/fire/trace_import_dialog.h"
#include "views/fire/trace_mapping_form.h"
#include "views/widgets/notice_bar.h"

#include <QAbstractItemModel>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QDropEvent>
#include <QFile>
#include <QLineEdit>
#include <QMimeData>
#include <QPushButton>
#include <QSignalSpy>
#include <QStringEncoder>
#include <QTest>
#include <QTimeZone>
#include <QUrl>

#include <memory>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::views;
using rickyard::test::YardFixture;

namespace {

QString noticeIn(QWidget &root)
{
    const auto all = root.findChildren<NoticeBar *>();
    for (const NoticeBar *bar : all)
        if (bar->isVisible())
            return bar->text();
    return {};
}

} // namespace

class TstTraceImport : public QObject
{
    Q_OBJECT

private:
    std::unique_ptr<YardFixture> m_yard;
    std::unique_ptr<TraceImportDialog> m_dialog;

    [[nodiscard]] Cook cook() const
    {
        return m_yard->verbs->books().cooks.value(m_yard->cooks.last());
    }
    [[nodiscard]] QVector<Trace> traces() const
    {
        const auto &shelf = m_yard->verbs->books().traces;
        return {shelf.cbegin(), shelf.cend()};
    }
    void start(RecordId of = 0)
    {
        m_dialog.reset();
        m_yard = std::make_unique<YardFixture>();
        m_dialog = std::make_unique<TraceImportDialog>(*m_yard->context,
                                                       of == 0 ? m_yard->cooks.last() : of);
        m_dialog->show();
        QApplication::setActiveWindow(m_dialog.get());
        QVERIFY(QTest::qWaitForWindowExposed(m_dialog.get()));
    }
    // Another cook, chosen in the dialog.
    Cook addCook(const QDateTime &lit, double length)
    {
        Cook made;
        made.pit = m_yard->bigPit;
        made.lit = Instant::ofSeconds(lit.toSecsSinceEpoch());
        made.fireOut = made.lit + durationFromHours(length);
        const auto id = m_yard->verbs->add(made);
        if (!id)
            qFatal("no cook: %s", qPrintable(id.message()));
        m_dialog = std::make_unique<TraceImportDialog>(*m_yard->context, id.value());
        m_dialog->show();
        return m_yard->verbs->books().cooks.value(id.value());
    }
    QString write(const QString &name, const QByteArray &bytes)
    {
        const QString path = m_yard->folder.filePath(name);
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size())
            qFatal("no file");
        return path;
    }
    // Clock times in the yard's zone, every ten seconds after the cook was lit.
    QByteArray logOf(const Cook &of, int rows, const char *style = "M/d/yyyy h:mm:ss AP")
    {
        QByteArray text = "Time,Grate F,Meat F\n";
        const QTimeZone zone("America/Chicago");
        for (int i = 0; i < rows; ++i)
            text += QDateTime::fromSecsSinceEpoch(of.lit.seconds() + i * 10LL, zone)
                        .toString(QLatin1String(style))
                        .toLatin1() +
                    ',' + QByteArray::number(200.0 + i % 50, 'f', 1) + ',' +
                    QByteArray::number(40.0 + i / 10.0, 'f', 1) + '\n';
        return text;
    }
    void openAndWait(const QString &path)
    {
        QSignalSpy checked(m_dialog.get(), &TraceImportDialog::checked);
        m_dialog->openFile(path);
        QVERIFY(checked.wait(20000));
    }
    qint64 importNow()
    {
        QSignalSpy imported(m_dialog.get(), &TraceImportDialog::imported);
        QTest::mouseClick(m_dialog->importButton(), Qt::LeftButton);
        if (imported.isEmpty() && !imported.wait(20000))
            return -1;
        return imported.first().first().toLongLong();
    }

private Q_SLOTS:
    void cleanup()
    {
        m_dialog.reset();
        m_yard.reset();
    }

    void guessedImportedAgainAndUndone()
    {
        start();
        openAndWait(write(QStringLiteral("night.csv"), logOf(cook(), 1000)));
        QVERIFY2(m_dialog->ready(), qPrintable(m_dialog->reportText()));
        QVERIFY(m_dialog->form().probeBox(QStringLiteral("Grate F"))->isChecked());
        QCOMPARE(m_dialog->form().unitBox()->currentText(), QStringLiteral("°F"));
        const QAbstractItemModel &preview = *m_dialog->previewModel();
        QCOMPARE(preview.rowCount(), 14);
        QCOMPARE(preview.index(0, 3).data().toString(), QStringLiteral("200.0\u2009°F"));
        // Another name, typed; the focus is put there as a click would.
        auto *name = m_dialog->form().probeName(QStringLiteral("Grate F"));
        QTest::mouseClick(name, Qt::LeftButton);
        QTest::keyClick(name, Qt::Key_A, Qt::ControlModifier);
        QSignalSpy checked(m_dialog.get(), &TraceImportDialog::checked);
        QTest::keyClicks(name, QStringLiteral("Left grate"));
        QVERIFY(checked.wait(20000));
        // The second probe is taken out with the space bar.
        auto *box = m_dialog->form().probeBox(QStringLiteral("Meat F"));
        box->setFocus();
        checked.clear();
        QTest::keyClick(box, Qt::Key_Space);
        QVERIFY(checked.wait(20000));
        QCOMPARE(preview.columnCount(), 4);
        const int steps = m_yard->verbs->undoStack().count();
        QCOMPARE(importNow(), 1000);
        QCOMPARE(traces().size(), 1);
        QCOMPARE(traces().first().cook, cook().id);
        QCOMPARE(traces().first().probe, QStringLiteral("Left grate"));
        QCOMPARE(traces().first().start, cook().lit);
        const auto points = decodeTrace(traces().first().block);
        QCOMPARE(points.value().size(), 1000);
        QCOMPARE(points.value().at(7).temperature, temperatureFromFahrenheit(207));
        QCOMPARE(points.value().at(7).offset, 70);
        QCOMPARE(m_yard->verbs->undoStack().count(), steps + 1);
        // The same file again changes nothing.
        QCOMPARE(importNow(), 0);
        QVERIFY(noticeIn(*m_dialog).contains(QStringLiteral("nothing was changed")));
        QCOMPARE(m_yard->verbs->undoStack().count(), steps + 1);
        QVERIFY(m_yard->verbs->undo().ok());
        QVERIFY(traces().isEmpty());
    }

    void refusedRowsSayWhereAndMayBeLeftOut()
    {
        start();
        QByteArray text = logOf(cook(), 100);
        text.replace(",240.0,", ",hot,"); // lines 42 and 92
        openAndWait(write(QStringLiteral("bad.csv"), text));
        QVERIFY(!m_dialog->ready());
        QVERIFY(!m_dialog->importButton()->isEnabled());
        QVERIFY2(
            m_dialog->reportText().contains(QStringLiteral("bad.csv, line 42, column 2 (Grate F)")),
            qPrintable(m_dialog->reportText()));
        QPushButton *leave = nullptr;
        for (QPushButton *one : m_dialog->findChildren<QPushButton *>())
            if (one->text() == QLatin1String("Leave them out"))
                leave = one;
        QVERIFY(leave != nullptr && leave->isVisible());
        QSignalSpy checked(m_dialog.get(), &TraceImportDialog::checked);
        QTest::mouseClick(leave, Qt::LeftButton);
        QVERIFY(checked.wait(20000));
        QVERIFY(m_dialog->ready());
        QCOMPARE(importNow(), 98 + 98);
    }

    // Celsius values read as °F: the file as a whole says so.
    void anUnlikelyUnitIsSaid()
    {
        start();
        QByteArray text = "Time,Chamber\n";
        for (int i = 0; i < 300; ++i)
            text += QDateTime::fromSecsSinceEpoch(cook().lit.seconds() + i * 60LL, Qt::UTC)
                        .toString(Qt::ISODate)
                        .toLatin1() +
                    ',' + QByteArray::number(i < 250 ? 60 : 250) + '\n';
        openAndWait(write(QStringLiteral("unit.csv"), text));
        QVERIFY(m_dialog->reportText().contains(QStringLiteral("Is it in °F?")));
        auto *unit = m_dialog->form().unitBox();
        unit->setFocus();
        QSignalSpy checked(m_dialog.get(), &TraceImportDialog::checked);
        QTest::keyClick(unit, Qt::Key_Up);
        QCOMPARE(unit->currentText(), QStringLiteral("°F"));
        QVERIFY(checked.wait(20000));
        QVERIFY(!m_dialog->reportText().contains(QStringLiteral("Is it in")));
    }

    void aSavedMappingComesBackForTheSameHeaders()
    {
        start();
        openAndWait(write(QStringLiteral("one.csv"), logOf(cook(), 50)));
        auto *box = m_dialog->form().probeBox(QStringLiteral("Meat F"));
        QSignalSpy checked(m_dialog.get(), &TraceImportDialog::checked);
        QTest::mouseClick(box, Qt::LeftButton, {}, QPoint(8, box->height() / 2));
        QVERIFY(checked.wait(20000));
        QVERIFY(!m_dialog->saveProfile(QString()));
        QVERIFY(m_dialog->saveProfile(QStringLiteral("Shed logger")));
        QCOMPARE(m_yard->verbs->books().importProfiles.size(), 1);
        QCOMPARE(m_yard->verbs->books().importProfiles.first().kind, QStringLiteral("trace"));
        const RecordId saved = m_yard->verbs->books().importProfiles.first().id;
        // Another window, another file with these headers.
        const QString next = write(QStringLiteral("two.csv"), logOf(cook(), 60));
        const QString other = write(QStringLiteral("other.csv"),
                                    "When,Probe 1\n2026-11-20T10:00:00,250\n"
                                    "2026-11-20T10:00:05,250\n2026-11-20T10:00:09,250\n");
        m_dialog = std::make_unique<TraceImportDialog>(*m_yard->context, m_yard->cooks.last());
        m_dialog->show();
        openAndWait(next);
        QCOMPARE(m_dialog->profile(), saved);
        QVERIFY(!m_dialog->form().probeBox(QStringLiteral("Meat F"))->isChecked());
        openAndWait(other);
        QCOMPARE(m_dialog->profile(), 0);
        // Saved again under its name it is the same record.
        openAndWait(next);
        QVERIFY(m_dialog->saveProfile(QStringLiteral("Shed logger")));
        QCOMPARE(m_yard->verbs->books().importProfiles.size(), 1);
    }

    void stoppedLeavesNothing()
    {
        start();
        const QByteArray text = logOf(cook(), 200);
        const QString path = write(QStringLiteral("long.csv"), text);
        QSignalSpy checked(m_dialog.get(), &TraceImportDialog::checked);
        m_dialog->openFile(path);
        QTRY_VERIFY(m_dialog->stopButton()->isVisible());
        QTest::mouseClick(m_dialog->stopButton(), Qt::LeftButton);
        QVERIFY(m_dialog->log().cancelled);
        QVERIFY(!m_dialog->importButton()->isEnabled());
        QVERIFY(m_dialog->reportText().contains(QStringLiteral("nothing was changed")));
        // A stop while it is written: the file and the books stay as they were.
        openAndWait(path);
        QVERIFY(m_dialog->ready());
        const int steps = m_yard->verbs->undoStack().count();
        QTest::mouseClick(m_dialog->importButton(), Qt::LeftButton);
        QTest::mouseClick(m_dialog->stopButton(), Qt::LeftButton);
        QTRY_VERIFY(m_dialog->importButton()->isEnabled());
        QVERIFY(traces().isEmpty());
        QCOMPARE(m_yard->verbs->undoStack().count(), steps);
        QVERIFY(noticeIn(*m_dialog).contains(QStringLiteral("Nothing was written")));
        QCOMPARE(importNow(), 400);
    }

    // A logger that writes UTF-16, tears its last line and knows no date, across midnight.
    void hardFileInOne()
    {
        start();
        const Cook late = addCook(
            QDateTime(QDate(2026, 11, 20), QTime(23, 59, 30), QTimeZone("America/Chicago")), 3);
        QString text = QStringLiteral("Clock;Grate °C\r\n");
        for (int i = 0; i < 12; ++i)
            text += QStringLiteral("%1;12%2,5\r\n")
                        .arg(QTime(23, 59, 30).addSecs(10 * i).toString(QStringLiteral("HH:mm:ss")))
                        .arg(i % 10);
        text += QStringLiteral("00:01:30;1");
        QStringEncoder wide(QStringEncoder::Utf16LE, QStringEncoder::Flag::WriteBom);
        openAndWait(write(QStringLiteral("wide.csv"), QByteArray(wide.encode(text))));
        QVERIFY2(m_dialog->ready(), qPrintable(m_dialog->reportText()));
        QCOMPARE(m_dialog->form().timeStyleBox()->currentText(), QStringLiteral("Time of day"));
        QVERIFY(m_dialog->reportText().contains(QStringLiteral("middle of line 14")));
        QVERIFY(m_dialog->reportText().contains(QStringLiteral("UTF-16")));
        QCOMPARE(importNow(), 12);
        QCOMPARE(traces().first().start, late.lit);
        const auto points = decodeTrace(traces().first().block);
        QCOMPARE(points.value().last().offset, 110);
        QCOMPARE(points.value().last().temperature, temperatureFromCelsius(121.5));
    }

    // Clock times over both changes of the clock keep their true distances.
    void clockChanges_data()
    {
        QTest::addColumn<QDateTime>("lit");
        QTest::newRow("back") << QDateTime(QDate(2025, 11, 2), QTime(5, 0), Qt::UTC);
        QTest::newRow("forward") << QDateTime(QDate(2026, 3, 8), QTime(6, 0), Qt::UTC);
    }
    void clockChanges()
    {
        QFETCH(QDateTime, lit);
        start();
        const Cook night = addCook(lit, 5);
        openAndWait(write(QStringLiteral("clock.csv"), logOf(night, 5 * 360)));
        QVERIFY2(m_dialog->ready(), qPrintable(m_dialog->reportText()));
        QCOMPARE(importNow(), 2 * 5 * 360);
        for (const Trace &trace : traces()) {
            QCOMPARE(trace.start, night.lit);
            const auto points = decodeTrace(trace.block);
            for (qsizetype i = 0; i < points.value().size(); ++i)
                QCOMPARE(points.value().at(i).offset, i * 10);
        }
    }

    void aFileThatCannotBeOpened()
    {
        start();
        m_dialog->openFile(m_yard->folder.filePath(QStringLiteral("none.csv")));
        QTRY_VERIFY(noticeIn(*m_dialog).contains(QStringLiteral("none.csv could not be opened")));
        m_dialog->openFile(write(QStringLiteral("empty.csv"), "\n"));
        QTRY_VERIFY(noticeIn(*m_dialog).contains(QStringLiteral("holds no rows")));
        QVERIFY(!m_dialog->importButton()->isEnabled());
    }

    void everythingHasAName()
    {
        start();
        openAndWait(write(QStringLiteral("one.csv"), logOf(cook(), 50)));
        for (const QWidget *one : m_dialog->findChildren<QWidget *>()) {
            const bool takes = qobject_cast<const QLineEdit *>(one) != nullptr ||
                               qobject_cast<const QComboBox *>(one) != nullptr ||
                               qobject_cast<const QAbstractButton *>(one) != nullptr;
            const auto *button = qobject_cast<const QAbstractButton *>(one);
            const bool inner = one->objectName().startsWith(QLatin1String("qt_")) ||
                               one->inherits("QTableCornerButton");
            if (takes && !inner && one->isVisible())
                QVERIFY2(!one->accessibleName().isEmpty() ||
                             (button != nullptr && !button->text().isEmpty()),
                         one->metaObject()->className());
        }
    }

    // From the cook's page: the key, and a file dropped on the cook; afterwards its figures.
    void fromTheCooksPage()
    {
        m_yard = std::make_unique<YardFixture>();
        CookDetail detail(*m_yard->context);
        detail.resize(480, 900);
        detail.setCook(m_yard->cooks.last());
        detail.show();
        QApplication::setActiveWindow(&detail);
        QVERIFY(QTest::qWaitForWindowExposed(&detail));
        QTRY_COMPARE(QApplication::activeWindow(), &detail);
        QTest::keyClick(&detail, Qt::Key_I, Qt::ControlModifier);
        // A button that is pressed by its key goes down for a moment first.
        QTRY_VERIFY(detail.findChild<TraceImportDialog *>() != nullptr);
        auto *byKey = detail.findChild<TraceImportDialog *>();
        QVERIFY(byKey->isVisible());
        QCOMPARE(byKey->cook(), m_yard->cooks.last());
        QTest::keyClick(byKey, Qt::Key_Escape);
        QTRY_VERIFY(detail.findChild<TraceImportDialog *>() == nullptr);
        const QString path = write(QStringLiteral("drop.csv"), logOf(cook(), 3000));
        QMimeData data;
        data.setUrls({QUrl::fromLocalFile(path)});
        QDragEnterEvent enter(QPoint(20, 20), Qt::CopyAction, &data, Qt::LeftButton,
                              Qt::NoModifier);
        QApplication::sendEvent(&detail, &enter);
        QVERIFY(enter.isAccepted());
        QDropEvent drop(QPointF(20, 20), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&detail, &drop);
        auto *dialog = detail.findChild<TraceImportDialog *>();
        QVERIFY(dialog != nullptr);
        QTRY_VERIFY_WITH_TIMEOUT(dialog->ready(), 20000);
        QSignalSpy imported(dialog, &TraceImportDialog::imported);
        QTest::mouseClick(dialog->importButton(), Qt::LeftButton);
        QVERIFY(!imported.isEmpty() || imported.wait(20000));
        dialog->close();
        detail.setCook(m_yard->cooks.last());
        QTRY_VERIFY(detail.probes().facts().isVisible());
        const QString text = detail.probes().facts().text();
        // 200 to 249 °F, evenly: 224.5. Without records of the weather nothing above outside.
        QVERIFY2(text.contains(QStringLiteral("Grate F, Mean: 225\u2009°F")) ||
                     text.contains(QStringLiteral("Grate F, Mean: 224\u2009°F")),
                 qPrintable(text));
        QVERIFY(text.contains(QStringLiteral("Grate F, Above outside: –")));
        QVERIFY(detail.probes().timeline().summary().contains(QStringLiteral("Grate F")));
    }
};

RICKYARD_TEST(TstTraceImport)
#include "tst_trace_import.moc"
