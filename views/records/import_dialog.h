// What the dialogs have in common that bring a foreign table in: the file and its saved mappings
// above, its columns on the left, the first rows as understood on the right, the whole file checked
// before anything is written. Reading and writing run on threads and can be stopped; stopping
// leaves nothing behind. What is read, and what becomes of it, is the business of those who derive
// from it.
#pragma once

#include "models/exchange/refusal.h"
#include "views/page.h"

#include <QDialog>
#include <QTimer>

class QAbstractItemModel;
class QBoxLayout;
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

class ImportDialog : public QDialog
{
    Q_OBJECT

public:
    ~ImportDialog() override;

    void openFile(const QString &path);
    // The mapping of a saved profile, or what is guessed from the file (0).
    virtual void useProfile(domain::RecordId profile) = 0;
    bool saveProfile(const QString &name);

    [[nodiscard]] domain::RecordId profile() const;
    [[nodiscard]] virtual bool ready() const = 0; // the file as a whole may be imported
    [[nodiscard]] QString reportText() const;
    [[nodiscard]] QAbstractItemModel *previewModel() const;
    [[nodiscard]] QPushButton *importButton() const { return m_import; }
    [[nodiscard]] QPushButton *stopButton() const { return m_stop; }

Q_SIGNALS:
    void checked();              // the whole file was read with the present mapping
    void imported(qint64 count); // written; 0 when all was there already

protected:
    struct Words {
        QString title;      // of the window
        QString choose;     // "Choose a weather file"
        QString filter;     // of the file chooser
        QString folderKey;  // of the settings
        QString intro;      // above the columns, before there is a file
        QString importName; // of the button, for screen readers
        QString profileKind;
        QString profileHint;  // "such as the name of the station"
        QString profileSaved; // what follows "The mapping is saved as “%1”."
    };
    enum class State { NoFile, Opening, Reading, Checked, Writing };

    ImportDialog(PageContext &context, Words words, QWidget *parent);
    // Puts the parts together; `form` are the columns on the left. Once, from the constructor.
    void build(QWidget *form);
    // Beside the choice of the mapping.
    void addChoice(const QString &label, QComboBox *box);

    virtual void open(const QString &path) = 0;
    virtual void forget() = 0; // what was read
    virtual void readNow() = 0;
    virtual void cancelReading() = 0;
    virtual void takeStopped() = 0;
    virtual void compare() = 0; // with what is in the yard; ends in write()
    [[nodiscard]] virtual bool hasFile() const = 0;
    [[nodiscard]] virtual QString importText() const = 0; // "Import 24 records"
    [[nodiscard]] virtual bool maySaveMapping() const = 0;
    [[nodiscard]] virtual QString mappingText() const = 0;
    [[nodiscard]] virtual QString writtenWords(qint64 count) const = 0;

    [[nodiscard]] State state() const { return m_state; }
    [[nodiscard]] PageContext &context() const { return m_context; }
    void setState(State state);
    void setFile(const QString &name);
    [[nodiscard]] const QString &fileName() const { return m_name; }
    void chooseProfile(domain::RecordId profile);
    void readSoon();
    void showProgress(qint64 done, qint64 total);
    // True when the mapping can be read with; otherwise it is said what is missing. `elsewhere` are
    // the messages that have no field.
    bool mayRead(const domain::Problems &problems, const QStringList &elsewhere);
    // The verdict in a word and the report in lines; the whole file is checked with this.
    void showReport(bool cancelled, bool ok, const exchange::Refusals &refused, QStringList lines);
    void write(const QVector<domain::Row> &rows, qint64 count, const QString &allThere);

    void closeEvent(QCloseEvent *event) override;
    void dragEnterEvent(QDragEnterEvent *event) override;
    void dropEvent(QDropEvent *event) override;
    void reject() override;

    NoticeBar *m_notice = nullptr;
    StatusPill *m_verdict = nullptr;
    TextLabel *m_guess = nullptr;
    QStandardItemModel *m_preview = nullptr;
    QTableView *m_previewView = nullptr;

private:
    QWidget *buildTop();
    QWidget *buildLeft(QWidget *form);
    QWidget *buildRight();
    QWidget *buildBottom();
    void fillProfiles();
    void chooseFile();
    void startImport();
    void written(const domain::Outcome<domain::Done> &done, qint64 count);
    void stop();

    PageContext &m_context;
    const Words m_say;
    QTimer m_soon;
    QTimer m_writePoll;
    State m_state = State::NoFile;
    QString m_name;
    std::shared_ptr<workspace::Workspace::LongWrite> m_write;
    QWidget *m_columns = nullptr;
    QBoxLayout *m_choices = nullptr;
    QVector<QComboBox *> m_choiceBoxes;
    QPushButton *m_choose = nullptr;
    TextLabel *m_fileName = nullptr;
    QComboBox *m_profiles = nullptr;
    QLineEdit *m_profileName = nullptr;
    QPushButton *m_saveProfile = nullptr;
    TextLabel *m_report = nullptr;
    QProgressBar *m_progress = nullptr;
    QPushButton *m_stop = nullptr;
    QPushButton *m_import = nullptr;
    QPushButton *m_close = nullptr;
};

} // namespace rickyard::views
