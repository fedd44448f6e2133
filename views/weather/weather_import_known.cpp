// The part of the import dialog for files that name their own columns.
#include "models/items/wording.h"
#include "views/weather/weather_import_dialog.h"
#include "views/weather/weather_mapping_form.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QStandardItemModel>
#include <QTableView>

namespace rickyard::views {

namespace {

constexpr int kKnownPreviewRows = 12;

} // namespace

bool WeatherImportDialog::selfDescribing() const
{
    return m_file.format != exchange::WeatherFormat::Mapped && profile() == 0;
}

void WeatherImportDialog::readKnown()
{
    const QString zone = context().books().yard().timeZone;
    exchange::WeatherReadOptions options;
    options.about = context().verbs.now(); // of reports that hold the day of the month only
    options.zone = zone;
    m_verdict->setStatus(Role::Info, tr("Reading"));
    m_job.readKnown(m_file.format, m_file.bytes, options, m_file.name);
}

void WeatherImportDialog::introduceKnown()
{
    QStringList quantities;
    for (const exchange::WeatherQuantity &quantity : exchange::weatherQuantities())
        quantities << quantity.key;
    showRecords(m_result.rows.mid(0, kKnownPreviewRows), quantities);
    QString words = exchange::introduction(m_file.format, m_result);
    if (m_file.format == exchange::WeatherFormat::Lcd)
        words += tr(" Its times are taken as the standard time of %1.")
                     .arg(context().books().yard().timeZone);
    m_guess->setText(words + tr(" It says what its columns are; no mapping is wanted."));
}

void WeatherImportDialog::showRecords(const QVector<domain::Weather> &records,
                                      const QStringList &quantities)
{
    m_preview->clear();
    const domain::TableSpec &spec = domain::specOf(domain::TableId::Weather);
    const QStringList keys =
        QStringList{QStringLiteral("time")} + quantities + QStringList{QStringLiteral("place")};
    QStringList labels;
    for (const QString &key : std::as_const(keys))
        labels << spec.fields.at(spec.indexOf(key)).label;
    m_preview->setHorizontalHeaderLabels(labels);
    const QLocale locale(QStringLiteral("en_US"));
    for (const domain::Weather &record : records) {
        const domain::Row row = domain::toRow(record);
        QList<QStandardItem *> items;
        for (const QString &key : std::as_const(keys)) {
            auto *item = new QStandardItem(items::displayText(context().books(),
                                                              spec.fields.at(spec.indexOf(key)),
                                                              domain::valueOf(row, key), locale));
            item->setEditable(false);
            items << item;
        }
        m_preview->appendRow(items);
    }
    m_previewView->resizeColumnsToContents();
}

} // namespace rickyard::views
