// The import dialog with files that say themselves what their columns are.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/weather/weather_import_dialog.h"
#include "views/weather/weather_mapping_form.h"

#include <QAbstractItemModel>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

namespace rickyard {

using test::YardFixture;
using views::WeatherImportDialog;

class TstWeatherFormatsDialog : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void noMappingIsWanted()
    {
        YardFixture yard;
        WeatherImportDialog dialog(*yard.context);
        dialog.show();
        QSignalSpy checked(&dialog, &WeatherImportDialog::checked);
        dialog.openFile(QStringLiteral(RICKYARD_TEST_DATA "/weather/metar-examples.txt"));
        QVERIFY(checked.wait(20000));
        QVERIFY2(dialog.ready(), qPrintable(dialog.reportText()));
        QVERIFY(!dialog.form().isVisible());
        QCOMPARE(dialog.previewModel()->rowCount(), 8);
        bool introduced = false;
        for (const QLabel *label : dialog.findChildren<QLabel *>())
            introduced = introduced ||
                         label->text().contains(QStringLiteral("This is a METAR file: 8 reports"));
        QVERIFY(introduced);
        QSignalSpy imported(&dialog, &WeatherImportDialog::imported);
        QTest::mouseClick(dialog.importButton(), Qt::LeftButton);
        QVERIFY(!imported.isEmpty() || imported.wait(20000));
        QCOMPARE(yard.verbs->books().weather.size(), 8);
        // A table after it wants its mapping again.
        checked.clear();
        dialog.openFile(QStringLiteral(RICKYARD_TEST_DATA "/weather/newark-2013-excerpt.csv"));
        QVERIFY(checked.wait(20000));
        QVERIFY(dialog.form().isVisible());
        QVERIFY(dialog.ready());
    }
};

RICKYARD_TEST(TstWeatherFormatsDialog)

} // namespace rickyard

#include "tst_weather_formats_dialog.moc"
