// Imports a weather file: its columns on the left, what they are taken for on the right, the whole
// file checked before anything is written. Reading and writing run on threads and can be stopped.
#pragma once

#include "views/page.h"
#include "views/weather/weather_import_job.h"

#include <QDialog>
#include <QTimer>

class QAbstractItemModel;
class QComboBox;
class QLineEdit;
class QProgressBar;
class QPushButton;
class QStandardItemModel;
class QTableView;

namespace rickyard::views {

class NoticeBar;
class StatusPill;
class TextLabel;
class WeatherMappingForm;

class WeatherImportDialog : public QDialog
{
    Q_OBJECT

public:
    explicit WeatherImportDialog(PageContext &context, QWidget *parent = nullptr);
    ~WeatherImportDialog() override;

    void openFile(const QString &path);
    [[nodiscard]] WeatherMappingForm &form() { return *m_form; }
    // The mapping of a saved profile, or what was guessed (0).
    void useProfile(domain::RecordId profile);
    bool saveProfile(const QString &name);
    [[nodiscard]] bool ready() const { return m_result.ok; } // the file as a whole may be imported
    [[nodiscard]] const exchange::WeatherImport &result() const { return m_result; }
    [[nodiscard]] QString reportText() const;
    [[nodiscard]] QAbstractItemModel *previewModel() const;
    [[nodiscard]] QPushButton *importButton() const { return m_import; }

Q_SIGNALS:
    void checked();                // the whole file was read with the present mapping
    void imported(qint64 changed); // records written; 0 when all were there already

protected:
    void closeEvent(QCloseEvent *event) override;
    void reject() override;

private:
    enum class State { NoFile, Opening, Reading, Checked, Writing };
    QWidget *buildTop();
    QWidget *buildLeft();
    QWidget *buildRight();
    QWidget *buildBottom();
    void setState(State state);
    void chooseFile();
    void takeFile(const OpenedWeatherFile &file);
    void splitAnew();
    void readSoon();
    void readNow();
    // The file names its own columns, and no saved mapping was chosen over that.
    [[nodiscard]] bool selfDescribing() const;
    void readKnown();
    void introduceKnown();
    void takeResult(const exchange::WeatherImport &result);
    void showPreview(const exchange::WeatherMapping &mapping);
    void showRecords(const QVector<domain::Weather> &records, const QStringList &quantities);
    void offerMissing();
    void startImport();
    void write(const WeatherChangesToWrite &changes);
    void written(const domain::Outcome<domain::Done> &done, qint64 count);
    void stop();
    void fillProfiles();

    PageContext &m_context;
    WeatherImportJob m_job;
    QTimer m_soon;
    QTimer m_writePoll;
    State m_state = State::NoFile;
    OpenedWeatherFile m_file;
    exchange::WeatherImport m_result;
    std::shared_ptr<workspace::Workspace::LongWrite> m_write;
    QPushButton *m_choose = nullptr;
    TextLabel *m_fileName = nullptr;
    TextLabel *m_guess = nullptr;
    QComboBox *m_profiles = nullptr;
    QLineEdit *m_profileName = nullptr;
    QPushButton *m_saveProfile = nullptr;
    WeatherMappingForm *m_form = nullptr;
    QStandardItemModel *m_preview = nullptr;
    QTableView *m_previewView = nullptr;
    StatusPill *m_verdict = nullptr;
    TextLabel *m_report = nullptr;
    NoticeBar *m_notice = nullptr;
    QProgressBar *m_progress = nullptr;
    QPushButton *m_stop = nullptr;
    QPushButton *m_import = nullptr;
    QPushButton *m_close = nullptr;
};

} // namespace rickyard::views
