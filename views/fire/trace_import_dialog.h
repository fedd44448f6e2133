// Brings a probe's log into a cook: its columns on the left, the first rows as understood on the
// right, the whole file checked before anything is written. Reading and writing run on threads and
// can be stopped; stopping leaves nothing behind.
#pragma once

#include "views/fire/trace_import_job.h"
#include "views/page.h"

#include <QDialog>

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
class TraceMappingForm;

class TraceImportDialog : public QDialog
{
    Q_OBJECT

public:
    // `cook`: the one to start with; 0 the latest.
    TraceImportDialog(PageContext &context, domain::RecordId cook, QWidget *parent = nullptr);
    ~TraceImportDialog() override;

    void openFile(const QString &path);
    void chooseCook(domain::RecordId cook);
    // The mapping of a saved profile, or what is guessed from the file (0).
    void useProfile(domain::RecordId profile);
    bool saveProfile(const QString &name);

    [[nodiscard]] TraceMappingForm &form() { return *m_form; }
    [[nodiscard]] domain::RecordId cook() const;
    [[nodiscard]] domain::RecordId profile() const;
    [[nodiscard]] bool ready() const; // the file as a whole may be imported
    [[nodiscard]] const exchange::ProbeLog &log() const { return m_log; }
    [[nodiscard]] QString reportText() const;
    [[nodiscard]] QAbstractItemModel *previewModel() const;
    [[nodiscard]] QPushButton *importButton() const { return m_import; }
    [[nodiscard]] QPushButton *stopButton() const { return m_stop; }

Q_SIGNALS:
    void checked();                 // the whole file was read with the present mapping
    void imported(qint64 readings); // written; 0 when all were there already

protected:
    void closeEvent(QCloseEvent *event) override;
    void dragEnterEvent(QDragEnterEvent *event) override;
    void dropEvent(QDropEvent *event) override;
    void reject() override;

private:
    enum class State { NoFile, Opening, Reading, Checked, Writing };
    QWidget *buildTop();
    QWidget *buildLeft();
    QWidget *buildRight();
    QWidget *buildBottom();
    void connectJob();
    void setState(State state);
    void fillCooks(domain::RecordId first);
    void fillProfiles();
    void chooseFile();
    void takeFile(const OpenedTraceFile &file);
    void guessAnew(int headerLine, QChar separator);
    void setMapping(exchange::ProbeLogMapping mapping, const QStringList &notes);
    void readSoon();
    void readNow();
    void showPreview(const exchange::ProbeLogMapping &mapping);
    void takeLog(const exchange::ProbeLog &log);
    void offerLeavingOut();
    void startImport();
    void write(const TraceChangesToWrite &changes);
    void written(const domain::Outcome<domain::Done> &done, qint64 readings);
    void stop();

    PageContext &m_context;
    TraceImportJob m_job;
    QTimer m_soon;
    QTimer m_writePoll;
    State m_state = State::NoFile;
    OpenedTraceFile m_file;
    exchange::ProbeLog m_log;
    std::shared_ptr<workspace::Workspace::LongWrite> m_write;
    QPushButton *m_choose = nullptr;
    TextLabel *m_fileName = nullptr;
    TextLabel *m_guess = nullptr;
    QComboBox *m_cooks = nullptr;
    QComboBox *m_profiles = nullptr;
    QLineEdit *m_profileName = nullptr;
    QPushButton *m_saveProfile = nullptr;
    TraceMappingForm *m_form = nullptr;
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
