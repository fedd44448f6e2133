// The Weather page and its import dialog on excerpts of real files (tests/data/weather/README.md).
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/records/field_editor.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/weather/weather_chart.h"
#include "views/weather/weather_course.h"
#include "views/weather/weather_import_dialog.h"
#include "views/weather/weather_mapping_form.h"
#include "views/weather/weather_page.h"
#include "views/weather/weather_summary.h"

#include <QAbstractItemModel>
#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <algorithm>

using namespace rickyard;
using namespace rickyard::domain;
using rickyard::test::YardFixture;
using views::WeatherImportDialog;
using views::WeatherPage;

namespace {

QString data(const char *name)
{
    return QStringLiteral("%1/weather/%2")
        .arg(QString::fromUtf8(RICKYARD_TEST_DATA), QString::fromLatin1(name));
}

// Opens a file in the dialog and waits until the whole of it was read.
bool openAndCheck(WeatherImportDialog &dialog, const QString &path)
{
    QSignalSpy checked(&dialog, &WeatherImportDialog::checked);
    dialog.openFile(path);
    return checked.wait(10000);
}

bool readAgain(WeatherImportDialog &dialog, const std::function<void()> &change)
{
    QSignalSpy checked(&dialog, &WeatherImportDialog::checked);
    change();
    return checked.wait(10000);
}

qint64 importNow(WeatherImportDialog &dialog)
{
    QSignalSpy imported(&dialog, &WeatherImportDialog::imported);
    QTest::mouseClick(dialog.importButton(), Qt::LeftButton);
    if (imported.isEmpty() && !imported.wait(20000))
        return -1;
    return imported.first().first().toLongLong();
}

void choose(QComboBox *box, const QString &key)
{
    box->setCurrentIndex(box->findData(key));
    Q_EMIT box->activated(box->currentIndex());
}

} // namespace

class TstWeatherPage : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void newarkIsGuessedImportedAndNotTwice();
    void seattleComesInAsNormals();
    void aRefusedRowNamesItsPlaceAndChangesNothing();
    void anImpossibleValueMayBeLeftOut();
    void anotherUnitIsSeenInThePreview();
    void aMappingIsSavedAndUsedAgain();
    void stoppingChangesNothing();
    void coverageIsCounted();
    void theCourseKeepsPeaksAndGaps();
    void thePageFollowsTheRecords();
    void anObservationIsTypedIn();
    void anEmptyYardTakesANoteByHand();
    void everythingHasAName();
};

void TstWeatherPage::newarkIsGuessedImportedAndNotTwice()
{
    YardFixture yard;
    WeatherPage page(*yard.context);
    page.resize(1180, 760);
    page.setVisible(true);
    WeatherImportDialog *dialog = page.importFile();
    QVERIFY(dialog != nullptr);
    QVERIFY(openAndCheck(*dialog, data("newark-2013-excerpt.csv")));
    QVERIFY2(dialog->ready(), qPrintable(dialog->reportText()));
    // 202 lines, one of them the headers.
    QCOMPARE(dialog->result().report.rowsRead, qint64{201});
    QVERIFY(dialog->result().report.humidityDisagrees > 0);
    QVERIFY2(
        dialog->reportText().contains(QString::number(dialog->result().report.humidityDisagrees)),
        qPrintable(dialog->reportText()));
    QCOMPARE(importNow(*dialog), qint64(dialog->result().rows.size()));
    QCOMPARE(yard.verbs->books().weather.size(), dialog->result().rows.size());
    // The first row of the file: 39.02 °F, dew point 26.06 °F, 10.357 mph at 06:00 UTC.
    const Weather first =
        *std::min_element(yard.verbs->books().weather.cbegin(), yard.verbs->books().weather.cend(),
                          [](const Weather &a, const Weather &b) { return a.time < b.time; });
    QCOMPARE(first.time.seconds(),
             QDateTime(QDate(2013, 1, 1), QTime(6, 0), Qt::UTC).toSecsSinceEpoch());
    QCOMPARE(first.temperature, std::optional(temperatureFromFahrenheit(39.02)));
    QCOMPARE(first.dewPoint, std::optional(temperatureFromFahrenheit(26.06)));
    QVERIFY(std::abs(milesPerHour(*first.wind) - 10.357) < 0.002);
    QVERIFY(!first.gust); // NA
    const auto before = yard.verbs->books().weather;
    QCOMPARE(importNow(*dialog), qint64{0});
    QCOMPARE(yard.verbs->books().weather.size(), before.size());
    QVERIFY(yard.verbs->undo().ok());
    QVERIFY(yard.verbs->books().weather.isEmpty());
}

void TstWeatherPage::seattleComesInAsNormals()
{
    YardFixture yard;
    WeatherImportDialog dialog(*yard.context);
    dialog.show();
    QVERIFY(openAndCheck(dialog, data("seattle-normals-excerpt.csv")));
    QCheckBox *normals = nullptr;
    for (QCheckBox *box : dialog.form().findChildren<QCheckBox *>())
        if (box->text().contains(QStringLiteral("normals")))
            normals = box;
    QVERIFY(normals != nullptr);
    if (!normals->isChecked())
        QVERIFY(readAgain(dialog, [&] { normals->click(); }));
    QVERIFY2(dialog.ready(), qPrintable(dialog.reportText()));
    QCOMPARE(importNow(dialog), qint64{200});
    for (const Weather &record : yard.verbs->books().weather)
        QVERIFY(record.normal);
    // First row: 1016.6 hPa, 4.0 °C, 3.8 m/s.
    const Weather first = yard.verbs->books().weather.first();
    QCOMPARE(first.temperature, std::optional(temperatureFromCelsius(4.0)));
    QCOMPARE(first.wind, std::optional(Speed::ofBase(3800)));
    QCOMPARE(first.pressure, std::optional(Pressure::ofBase(101660)));
    const views::WeatherSummary summary = views::summarise(yard.verbs->books());
    QCOMPARE(summary.normals, qint64{200});
    QCOMPARE(summary.observations, qint64{0});
}

void TstWeatherPage::aRefusedRowNamesItsPlaceAndChangesNothing()
{
    YardFixture yard;
    const QString path = yard.folder.filePath(QStringLiteral("station.csv"));
    QFile file(path);
    QVERIFY(file.open(QIODevice::WriteOnly));
    file.write("time,temp,wind_speed\n2026-01-01T06:00:00Z,41,5\n2026-01-01T07:00:00Z,cold,6\n");
    file.close();
    WeatherImportDialog dialog(*yard.context);
    dialog.show();
    QVERIFY(openAndCheck(dialog, path));
    QVERIFY(!dialog.ready());
    QVERIFY(!dialog.importButton()->isEnabled());
    QCOMPARE(dialog.form().placeField()->text(), QStringLiteral("station"));
    const QString report = dialog.reportText();
    QVERIFY2(report.contains(QStringLiteral("line 3")) && report.contains(QStringLiteral("cold")) &&
                 report.contains(QStringLiteral("temp")),
             qPrintable(report));
    QTest::mouseClick(dialog.importButton(), Qt::LeftButton);
    QVERIFY(yard.verbs->books().weather.isEmpty());
    // "cold" is no number at all, so that counting impossible values as missing does not help it.
    QVERIFY(readAgain(dialog, [&] {
        for (QPushButton *one : dialog.findChildren<QPushButton *>())
            if (one->text() == QStringLiteral("Count them as missing"))
                one->click();
    }));
    QVERIFY(!dialog.ready());
    // A file that is not there is said so, and nothing else is lost.
    dialog.openFile(yard.folder.filePath(QStringLiteral("nothing.csv")));
    QTest::qWait(200);
    QVERIFY(!dialog.importButton()->isEnabled());
}

void TstWeatherPage::anImpossibleValueMayBeLeftOut()
{
    YardFixture yard;
    const QString path = yard.folder.filePath(QStringLiteral("gale.csv"));
    QFile file(path);
    QVERIFY(file.open(QIODevice::WriteOnly));
    file.write("time,temp,wind_speed\n2026-01-01T06:00:00Z,41,5\n2026-01-01T07:00:00Z,42,1048\n");
    file.close();
    WeatherImportDialog dialog(*yard.context);
    dialog.show();
    QVERIFY(openAndCheck(dialog, path));
    QVERIFY(!dialog.ready());
    QVERIFY(readAgain(dialog, [&] {
        for (QPushButton *one : dialog.findChildren<QPushButton *>())
            if (one->text() == QStringLiteral("Count them as missing"))
                one->click();
    }));
    QVERIFY2(dialog.ready(), qPrintable(dialog.reportText()));
    QCOMPARE(importNow(dialog), qint64{2});
    QVERIFY(yard.verbs->books().weather.first().wind.has_value());
    QVERIFY(!yard.verbs->books().weather.last().wind.has_value());
    QCOMPARE(yard.verbs->books().weather.last().temperature,
             std::optional(temperatureFromFahrenheit(42)));
}

void TstWeatherPage::anotherUnitIsSeenInThePreview()
{
    YardFixture yard;
    WeatherImportDialog dialog(*yard.context);
    dialog.show();
    QVERIFY(openAndCheck(dialog, data("newark-2013-excerpt.csv")));
    const auto shown = [&] {
        for (int c = 0; c < dialog.previewModel()->columnCount(); ++c)
            if (dialog.previewModel()->headerData(c, Qt::Horizontal).toString() ==
                QStringLiteral("Temperature"))
                return dialog.previewModel()->index(0, c).data().toString();
        return QString();
    };
    QVERIFY2(shown().startsWith(QStringLiteral("39")), qPrintable(shown()));
    QVERIFY(readAgain(dialog, [&] {
        choose(dialog.form().unitBox(QStringLiteral("temperature")), QStringLiteral("degC"));
    }));
    // 39.02 °C is 102.2 °F.
    QVERIFY2(shown().startsWith(QStringLiteral("102")), qPrintable(shown()));
    // Without a column the quantity is not imported.
    QVERIFY(readAgain(dialog, [&] {
        choose(dialog.form().columnBox(QStringLiteral("temperature")), QString());
    }));
    QVERIFY(shown().isEmpty());
}

void TstWeatherPage::aMappingIsSavedAndUsedAgain()
{
    YardFixture yard;
    WeatherImportDialog dialog(*yard.context);
    dialog.show();
    QVERIFY(openAndCheck(dialog, data("newark-2013-excerpt.csv")));
    QVERIFY(readAgain(dialog,
                      [&] { choose(dialog.form().columnBox(QStringLiteral("gust")), QString()); }));
    const exchange::WeatherMapping mapping = dialog.form().mapping();
    QVERIFY(!dialog.saveProfile(QStringLiteral("  ")));
    QVERIFY(yard.verbs->books().importProfiles.isEmpty());
    QVERIFY(dialog.saveProfile(QStringLiteral("Airport, hourly")));
    QCOMPARE(yard.verbs->books().importProfiles.size(), 1);
    QVERIFY(dialog.saveProfile(QStringLiteral("Airport, hourly"))); // the same one again
    QCOMPARE(yard.verbs->books().importProfiles.size(), 1);
    WeatherImportDialog second(*yard.context);
    second.show();
    QVERIFY(openAndCheck(second, data("newark-2013-excerpt.csv")));
    QVERIFY(second.form().mapping() != mapping);
    QVERIFY(readAgain(second,
                      [&] { second.useProfile(yard.verbs->books().importProfiles.firstKey()); }));
    QCOMPARE(second.form().mapping(), mapping);
}

void TstWeatherPage::stoppingChangesNothing()
{
    YardFixture yard;
    WeatherImportDialog dialog(*yard.context);
    dialog.show();
    QVERIFY(openAndCheck(dialog, data("newark-2013-excerpt.csv")));
    choose(dialog.form().unitBox(QStringLiteral("wind")), QStringLiteral("m/s"));
    const auto buttons = dialog.findChildren<QPushButton *>();
    for (QPushButton *button : buttons)
        if (button->text() == QStringLiteral("Stop"))
            button->click();
    QVERIFY(!dialog.ready());
    QVERIFY(!dialog.importButton()->isEnabled());
    QTest::qWait(500);
    QVERIFY(!dialog.ready());
    QVERIFY(yard.verbs->books().weather.isEmpty());
}

void TstWeatherPage::coverageIsCounted()
{
    Books books;
    const auto at = [&](RecordId id, qint64 hour) {
        Weather record;
        record.id = id;
        record.time = Instant::ofSeconds(hour * 3600);
        books.weather.insert(id, record);
    };
    at(1, 0);
    at(2, 1);
    at(3, 2);
    at(4, 12);
    // 12 hours: two whole ones, and of the ten between 2 and 12 an hour and a half at each end.
    const views::WeatherSummary summary = views::summarise(books);
    QCOMPARE(summary.observations, qint64{4});
    QVERIFY(std::abs(summary.covered - 5.0 / 12.0) < 1e-12);
    QCOMPARE(views::ageWords(Duration::ofBase(49 * 3600)), QStringLiteral("2 days"));
}

void TstWeatherPage::theCourseKeepsPeaksAndGaps()
{
    std::vector<views::WeatherSample> samples;
    for (int i = 0; i < 20000; ++i) {
        if (i >= 8000 && i < 10000)
            continue; // a silence of 2000 hours
        samples.push_back(
            {i * 3600LL, std::sin(i * 0.01) * 10 + (i == 4321 ? 50 : 0) - (i == 15001 ? 50 : 0)});
    }
    const auto pieces = views::drawnPieces(samples, 1200);
    QCOMPARE(pieces.size(), size_t{2});
    double low = 0;
    double high = 0;
    size_t points = 0;
    for (const auto &piece : pieces) {
        points += piece.size();
        for (const auto &sample : piece) {
            low = std::min(low, sample.value);
            high = std::max(high, sample.value);
        }
    }
    QVERIFY(points <= 1200 && points > 600);
    QVERIFY(high > 40 && low < -40);
    QCOMPARE(pieces.front().back().time, 7999 * 3600LL);
    QCOMPARE(pieces.back().front().time, 10000 * 3600LL);
}

void TstWeatherPage::thePageFollowsTheRecords()
{
    YardFixture yard;
    WeatherPage page(*yard.context);
    page.resize(1180, 760);
    page.setVisible(true);
    QVERIFY(QTest::qWaitForWindowExposed(&page));
    QVERIFY(page.coveredText().isEmpty());
    QVector<Row> rows;
    for (int hour = 0; hour < 100; ++hour) {
        Weather record;
        record.place = QStringLiteral("Yard");
        record.time = yard.now - Duration::ofBase(hour * 3600);
        record.temperature = temperatureFromFahrenheit(40 + hour % 24);
        record.wind = Speed::ofBase(2000);
        rows << toRow(record);
    }
    QVERIFY(yard.verbs->putAll(rows, QStringLiteral("weather")).ok());
    QTRY_COMPARE(page.coveredText(), QStringLiteral("100"));
    page.chart().setDays(0);
    QTRY_COMPARE(page.chart().drawnPoints(), qsizetype{200}); // temperature and wind
    page.chart().setDays(7);
    QCOMPARE(page.chart().drawnPoints(), qsizetype{200});
    const RecordId id = yard.verbs->books().weather.firstKey();
    QVERIFY(page.show({TableId::Weather, id}));
    QCOMPARE(page.records().chosen(), id);
    QVERIFY(!page.show({TableId::Lot, 1}));
}

void TstWeatherPage::anObservationIsTypedIn()
{
    YardFixture yard;
    Weather record;
    record.place = QStringLiteral("Yard");
    record.time = yard.now - Duration::ofBase(7200);
    record.temperature = temperatureFromFahrenheit(50);
    QVERIFY(yard.verbs->add(record).ok());
    WeatherPage page(*yard.context);
    page.resize(1180, 760);
    page.setVisible(true);
    page.records().addNew();
    views::RecordForm &form = page.records().form();
    QVERIFY(!form.save()); // a record without a place is refused at the field
    QCOMPARE(yard.verbs->books().weather.size(), 1);
    QTest::keyClicks(form.editor(QStringLiteral("place"))->inner(), QStringLiteral("Yard"));
    QTest::keyClicks(form.editor(QStringLiteral("temperature"))->inner(), QStringLiteral("33.8"));
    QVERIFY(form.save());
    QCOMPARE(yard.verbs->books().weather.size(), 2);
    QCOMPARE(yard.verbs->books().weather.last().temperature,
             std::optional(temperatureFromFahrenheit(33.8)));
}

void TstWeatherPage::anEmptyYardTakesANoteByHand()
{
    YardFixture yard;
    WeatherPage page(*yard.context);
    page.resize(1180, 760);
    page.setVisible(true);
    QVERIFY(!page.records().isVisible());
    for (QPushButton *one : page.findChildren<QPushButton *>())
        if (one->text() == QStringLiteral("Note what you see"))
            QTest::mouseClick(one, Qt::LeftButton);
    QVERIFY(page.records().isVisible());
    views::RecordForm &form = page.records().form();
    QTest::keyClicks(form.editor(QStringLiteral("temperature"))->inner(), QStringLiteral("28"));
    QVERIFY(form.save());
    const Weather record = yard.verbs->books().weather.last();
    QCOMPARE(record.temperature, std::optional(temperatureFromFahrenheit(28)));
    QCOMPARE(record.time, yard.now);
    QCOMPARE(record.place, yard.verbs->books().yard().name);
}

void TstWeatherPage::everythingHasAName()
{
    YardFixture yard;
    WeatherPage page(*yard.context);
    page.setVisible(true);
    WeatherImportDialog dialog(*yard.context);
    dialog.show();
    for (QWidget *root : QVector<QWidget *>{&page, &dialog}) {
        const auto children = root->findChildren<QWidget *>();
        for (const QWidget *child : children) {
            const bool asked = qobject_cast<const QAbstractButton *>(child) != nullptr ||
                               qobject_cast<const QComboBox *>(child) != nullptr ||
                               qobject_cast<const QLineEdit *>(child) != nullptr;
            const bool inner = child->objectName().startsWith(QStringLiteral("qt_")) ||
                               qobject_cast<const QComboBox *>(child->parentWidget()) != nullptr ||
                               qobject_cast<const QLineEdit *>(child->parentWidget()) != nullptr ||
                               child->parentWidget()->inherits("QAbstractItemView") ||
                               child->parentWidget()->inherits("QAbstractSpinBox");
            if (!asked || inner)
                continue;
            const auto *button = qobject_cast<const QAbstractButton *>(child);
            QVERIFY2(!child->accessibleName().isEmpty() ||
                         (button != nullptr && !button->text().isEmpty()),
                     qPrintable(QStringLiteral("%1 in %2")
                                    .arg(QString::fromLatin1(child->metaObject()->className()),
                                         QString::fromLatin1(
                                             child->parentWidget()->metaObject()->className()))));
        }
    }
}

RICKYARD_TEST(TstWeatherPage)
#include "tst_weather_page.moc"
