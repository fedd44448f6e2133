// Imports a weather file: its columns on the left, what they are taken for on the right
// (views/records/import_dialog.h). A file of a known format says itself what its columns are.
#pragma once

#include "views/records/import_dialog.h"
#include "views/weather/weather_import_job.h"

namespace rickyard::views {

class WeatherMappingForm;

class WeatherImportDialog : public ImportDialog
{
    Q_OBJECT

public:
    explicit WeatherImportDialog(PageContext &context, QWidget *parent = nullptr);
    ~WeatherImportDialog() override;

    void useProfile(domain::RecordId profile) override;
    [[nodiscard]] WeatherMappingForm &form() { return *m_form; }
    [[nodiscard]] bool ready() const override { return m_result.ok && !m_result.rows.isEmpty(); }
    [[nodiscard]] const exchange::WeatherImport &result() const { return m_result; }

protected:
    void open(const QString &path) override;
    void forget() override { m_result = {}; }
    void readNow() override;
    void cancelReading() override { m_job.cancel(); }
    void takeStopped() override;
    void compare() override;
    [[nodiscard]] bool hasFile() const override { return !m_file.bytes.isEmpty(); }
    [[nodiscard]] QString importText() const override;
    [[nodiscard]] bool maySaveMapping() const override { return !selfDescribing(); }
    [[nodiscard]] QString mappingText() const override;
    [[nodiscard]] QString writtenWords(qint64 count) const override;

private:
    void takeFile(const OpenedWeatherFile &file);
    void splitAnew();
    // The file names its own columns, and no saved mapping was chosen over that.
    [[nodiscard]] bool selfDescribing() const;
    void readKnown();
    void introduceKnown();
    void takeResult(const exchange::WeatherImport &result);
    void showPreview(const exchange::WeatherMapping &mapping);
    void showRecords(const QVector<domain::Weather> &records, const QStringList &quantities);
    void offerMissing();
    void takeChanges(const WeatherChangesToWrite &changes);

    WeatherImportJob m_job;
    OpenedWeatherFile m_file;
    exchange::WeatherImport m_result;
    WeatherMappingForm *m_form = nullptr;
};

} // namespace rickyard::views
