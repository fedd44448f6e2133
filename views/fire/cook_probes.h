// What the probes of one cook tell: its timeline, their figures, and the way to bring in a log.
#pragma once

#include "views/page.h"

#include <QPointer>

class QPushButton;

namespace rickyard::views {

class CookTimeline;
class ProbeFacts;
class TraceImportDialog;

class CookProbes : public QWidget
{
    Q_OBJECT

public:
    // A file dropped on `dropArea` is taken as a log of this cook.
    explicit CookProbes(PageContext &context, QWidget *dropArea, QWidget *parent = nullptr);
    void setCook(domain::RecordId cook);
    // The dialog with this cook chosen; null for a yard that is only read.
    TraceImportDialog *importFile(const QString &path = {});
    // The timeline and the figures in a window of their own.
    void showLarge();
    [[nodiscard]] CookTimeline &timeline() { return *m_timeline; }
    [[nodiscard]] ProbeFacts &facts() { return *m_facts; }
    [[nodiscard]] QPushButton *importButton() const { return m_import; }

    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    PageContext &m_context;
    QWidget *m_dropArea;
    domain::RecordId m_cook = 0;
    CookTimeline *m_timeline;
    ProbeFacts *m_facts;
    QPushButton *m_import;
    QPointer<TraceImportDialog> m_dialog;
};

} // namespace rickyard::views
