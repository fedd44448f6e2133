#include "views/fire/cook_probes.h"

#include "views/fire/cook_timeline.h"
#include "views/fire/fire_words.h"
#include "views/fire/probe_facts.h"
#include "views/fire/trace_import_dialog.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QDialog>
#include <QDropEvent>
#include <QFileDialog>
#include <QMimeData>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::Cook;

CookProbes::CookProbes(PageContext &context, QWidget *dropArea, QWidget *parent)
    : QWidget(parent), m_context(context), m_dropArea(dropArea), m_timeline(new CookTimeline(this)),
      m_facts(new ProbeFacts(this)),
      m_import(new QPushButton(icon(QStringLiteral("import")), tr("Import a probe's log…"), this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_timeline->setSmall(true);
    auto *large = new QPushButton(tr("Open large"), this);
    large->setAccessibleName(tr("Open the timeline in a window of its own"));
    large->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_L));
    large->setToolTip(tr("The timeline in a window of its own (Ctrl+L)"));
    connect(large, &QPushButton::clicked, this, &CookProbes::showLarge);
    m_timeline->addTool(large);
    column->addWidget(m_timeline);
    column->addWidget(m_facts);
    m_import->setAccessibleName(tr("Import the log of a probe into this cook"));
    m_import->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_I));
    m_import->setToolTip(tr("Or drop the file here (Ctrl+I)"));
    m_import->setEnabled(!context.readOnly());
    connect(m_import, &QPushButton::clicked, this, [this] { importFile(); });
    column->addWidget(m_import, 0, Qt::AlignLeft);
    connect(m_timeline, &CookTimeline::curvesRead, this,
            [this] { m_facts->show(m_context.books(), *m_timeline->curves()); });
    if (!context.readOnly()) {
        m_dropArea->setAcceptDrops(true);
        m_dropArea->installEventFilter(this);
    }
}

void CookProbes::setCook(domain::RecordId cook)
{
    if (cook != m_cook)
        m_facts->hide();
    m_cook = cook;
    m_timeline->setCook(m_context.books(), cook, m_context.verbs.now());
}

TraceImportDialog *CookProbes::importFile(const QString &path)
{
    if (m_context.readOnly())
        return nullptr;
    if (!m_dialog) {
        m_dialog = new TraceImportDialog(m_context, m_cook, window());
        m_dialog->setAttribute(Qt::WA_DeleteOnClose);
        m_dialog->setWindowModality(Qt::WindowModal);
    }
    m_dialog->chooseCook(m_cook);
    m_dialog->show();
    m_dialog->raise();
    if (!path.isEmpty())
        m_dialog->openFile(path);
    return m_dialog;
}

bool CookProbes::eventFilter(QObject *watched, QEvent *event)
{
    const bool drag = event->type() == QEvent::DragEnter || event->type() == QEvent::Drop;
    if (watched != m_dropArea || !drag)
        return QWidget::eventFilter(watched, event);
    auto *drop = static_cast<QDropEvent *>(event); // of which a drag is one
    const QMimeData *dropped = drop->mimeData();
    if (m_cook == 0 || dropped == nullptr || !dropped->hasUrls() ||
        !dropped->urls().first().isLocalFile())
        return false;
    drop->acceptProposedAction();
    if (event->type() == QEvent::Drop)
        importFile(dropped->urls().first().toLocalFile());
    return true;
}

void CookProbes::showLarge()
{
    const auto cook = m_context.books().cooks.constFind(m_cook);
    if (cook == m_context.books().cooks.constEnd())
        return;
    const Theme &look = theme(this);
    auto *dialog = new QDialog(window());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(cookTitle(m_context.books(), *cook));
    dialog->resize(look.px(1160), look.px(740));
    auto *column = new QVBoxLayout(dialog);
    column->setContentsMargins(look.space(5), look.space(5), look.space(5), look.space(4));
    column->setSpacing(look.space(3));
    column->addWidget(new TextLabel(dialog->windowTitle(), TextStyle::Title, Role::Ink, dialog));
    auto *timeline = new CookTimeline(dialog);
    timeline->setSmall(false);
    auto *picture = new QPushButton(tr("Save a picture…"), dialog);
    picture->setAutoDefault(false);
    picture->setAccessibleName(tr("Save the timeline as a picture"));
    connect(picture, &QPushButton::clicked, dialog, [this, dialog, timeline] {
        const QString path = QFileDialog::getSaveFileName(dialog, tr("Save a picture"), {},
                                                          tr("Pictures (*.png *.svg)"));
        if (path.isEmpty())
            return;
        if (const auto problem = timeline->view().exportPicture(path))
            m_context.refuse({{QString(), *problem}});
        else
            m_context.say(tr("The picture is saved."));
    });
    timeline->addTool(picture);
    column->addWidget(timeline, 2);
    auto *scroll = new QScrollArea(dialog);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setAccessibleName(tr("What the probes say"));
    auto *facts = new ProbeFacts(scroll);
    facts->setProbesAcross(6);
    scroll->setWidget(facts);
    column->addWidget(scroll, 1);
    connect(timeline, &CookTimeline::curvesRead, facts,
            [this, facts, timeline] { facts->show(m_context.books(), *timeline->curves()); });
    timeline->setCook(m_context.books(), m_cook, m_context.verbs.now());
    dialog->show();
    timeline->view().setFocus(Qt::OtherFocusReason);
}

} // namespace rickyard::views
