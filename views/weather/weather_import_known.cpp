// Parts of the import dialog: saved mappings, and files that name their own columns.
#include "models/items/wording.h"
#include "views/theme/theme_hub.h"
#include "views/weather/weather_import_dialog.h"
#include "views/weather/weather_mapping_form.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QLineEdit>
#include <QStandardItemModel>
#include <QTableView>

namespace rickyard::views {

namespace {

constexpr int kKnownPreviewRows = 12;

} // namespace

bool WeatherImportDialog::selfDescribing() const
{
    return m_file.format != exchange::WeatherFormat::Mapped &&
           m_profiles->currentData().toLongLong() == 0;
}

void WeatherImportDialog::readKnown()
{
    const QString zone = m_context.books().yard().timeZone;
    exchange::WeatherReadOptions options;
    options.about = m_context.verbs.now(); // of reports that hold the day of the month only
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
                     .arg(m_context.books().yard().timeZone);
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
            auto *item = new QStandardItem(items::displayText(m_context.books(),
                                                              spec.fields.at(spec.indexOf(key)),
                                                              domain::valueOf(row, key), locale));
            item->setEditable(false);
            items << item;
        }
        m_preview->appendRow(items);
    }
    m_previewView->resizeColumnsToContents();
}

void WeatherImportDialog::fillProfiles()
{
    const QVariant kept = m_profiles->currentData();
    m_profiles->clear();
    m_profiles->addItem(tr("As guessed from the file"), QVariant::fromValue<qint64>(0));
    for (const domain::ImportProfile &profile : m_context.books().importProfiles)
        if (profile.kind == QLatin1String(exchange::kWeatherProfileKind))
            m_profiles->addItem(profile.name, QVariant::fromValue<qint64>(profile.id));
    m_profiles->setCurrentIndex(qMax(0, m_profiles->findData(kept)));
}

bool WeatherImportDialog::saveProfile(const QString &name)
{
    if (name.trimmed().isEmpty()) {
        m_notice->showProblem(
            tr("Give the mapping a name first, such as the name of the station."));
        m_profileName->setFocus(Qt::OtherFocusReason);
        return false;
    }
    domain::ImportProfile profile;
    for (const domain::ImportProfile &other : m_context.books().importProfiles)
        if (other.name == name.trimmed() &&
            other.kind == QLatin1String(exchange::kWeatherProfileKind))
            profile = other;
    profile.name = name.trimmed();
    profile.kind = QLatin1String(exchange::kWeatherProfileKind);
    profile.mapping = exchange::toText(m_form->mapping());
    domain::Problems problems;
    domain::RecordId id = profile.id;
    if (id == 0) {
        const auto added = m_context.verbs.add(profile, tr("save mapping %1").arg(profile.name));
        problems = added.problems();
        id = added ? added.value() : 0;
    } else {
        problems =
            m_context.verbs.edit(profile, tr("save mapping %1").arg(profile.name)).problems();
    }
    if (!problems.isEmpty()) {
        m_notice->showProblem(domain::joined(problems));
        return false;
    }
    fillProfiles();
    m_profiles->setCurrentIndex(m_profiles->findData(QVariant::fromValue<qint64>(id)));
    m_notice->showGood(tr("The mapping is saved as “%1”.").arg(profile.name));
    return true;
}

} // namespace rickyard::views
