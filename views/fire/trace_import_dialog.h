// Brings a probe's log into a cook: its columns on the left, the first rows as understood on the
// right (views/records/import_dialog.h).
#pragma once

#include "views/fire/trace_import_job.h"
#include "views/records/import_dialog.h"

namespace rickyard::views {

class TraceMappingForm;

class TraceImportDialog : public ImportDialog
{
    Q_OBJECT

public:
    // `cook`: the one to start with; 0 the latest.
    TraceImportDialog(PageContext &context, domain::RecordId cook, QWidget *parent = nullptr);
    ~TraceImportDialog() override;

    void chooseCook(domain::RecordId cook);
    void useProfile(domain::RecordId profile) override;

    [[nodiscard]] TraceMappingForm &form() { return *m_form; }
    [[nodiscard]] domain::RecordId cook() const;
    [[nodiscard]] bool ready() const override;
    [[nodiscard]] const exchange::ProbeLog &log() const { return m_log; }

protected:
    void open(const QString &path) override;
    void forget() override { m_log = {}; }
    void readNow() override;
    void cancelReading() override { m_job.cancel(); }
    void takeStopped() override;
    void compare() override;
    [[nodiscard]] bool hasFile() const override { return !m_file.head.isEmpty(); }
    [[nodiscard]] QString importText() const override;
    [[nodiscard]] bool maySaveMapping() const override { return hasFile(); }
    [[nodiscard]] QString mappingText() const override;
    [[nodiscard]] QString writtenWords(qint64 count) const override;

private:
    void fillCooks(domain::RecordId first);
    void takeFile(const OpenedTraceFile &file);
    void guessAnew(int headerLine, QChar separator);
    void setMapping(exchange::ProbeLogMapping mapping, const QStringList &notes);
    void showPreview(const exchange::ProbeLogMapping &mapping);
    void takeLog(const exchange::ProbeLog &log);
    void offerLeavingOut();
    void takeChanges(const TraceChangesToWrite &changes);

    TraceImportJob m_job;
    OpenedTraceFile m_file;
    exchange::ProbeLog m_log;
    QComboBox *m_cooks = nullptr;
    TraceMappingForm *m_form = nullptr;
};

} // namespace rickyard::views
