#include "views/reports/paper_view.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"

#include <QClipboard>
#include <QFileDialog>
#include <QGuiApplication>
#include <QPushButton>
#include <QScrollArea>
#include <QStandardPaths>
#include <QVBoxLayout>

namespace rickyard::views {

PaperView::PaperView(const Paper &paper, QWidget *parent) : QDialog(parent), m_paper(paper)
{
    const Theme &look = theme(this);
    setWindowTitle(paper.title);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(5), look.space(5), look.space(5), look.space(5));
    column->setSpacing(look.space(4));
    buildText(column);
    m_said = new TextLabel(QString(), TextStyle::Caption, Role::InkMuted);
    m_said->setWordWrap(true);
    m_said->setVisible(false);
    column->addWidget(m_said);
    m_acts = new QWidget;
    auto *flow = new FlowLayout(m_acts);
    flow->setContentsMargins(0, 0, 0, 0);
    const auto act = [&](const QString &text, const QString &name, auto slot) {
        auto *button = new QPushButton(text);
        button->setAccessibleName(name);
        button->setAutoDefault(false); // Enter does nothing to paper by accident
        connect(button, &QPushButton::clicked, this, slot);
        flow->addWidget(button);
    };
    act(tr("Print …"), tr("Print the sheet"), [this] { printPaper(m_paper, this); });
    act(tr("Save as PDF …"), tr("Save the sheet as a PDF file"), [this] { savePdf(); });
    act(tr("Copy as text"), tr("Copy the sheet as plain text"), [this] {
        QGuiApplication::clipboard()->setText(text());
        m_said->setText(tr("Copied. Paste it into a message."));
        m_said->setVisible(true);
    });
    act(tr("Close"), tr("Close the sheet"), [this] { reject(); });
    column->addWidget(m_acts);
    resize(look.px(620), look.px(700));
}

void PaperView::buildText(QVBoxLayout *column)
{
    const Theme &look = theme(this);
    auto *body = new QWidget;
    auto *lines = new QVBoxLayout(body);
    lines->setContentsMargins(0, 0, look.space(2), 0);
    lines->setSpacing(look.space(1));
    const auto add = [&](const QString &text, TextStyle style, Role role) {
        auto *label = new TextLabel(text, style, role);
        label->setWordWrap(true);
        lines->addWidget(label);
    };
    add(m_paper.title, TextStyle::Title, Role::Ink);
    if (!m_paper.subtitle.isEmpty())
        add(m_paper.subtitle, TextStyle::Body, Role::InkMuted);
    for (const PaperSection &section : m_paper.sections) {
        lines->addSpacing(look.space(3));
        add(section.heading, TextStyle::Heading, Role::Ink);
        for (const QString &line : section.lines)
            add(section.boxes ? QString(QStringLiteral("☐  ") + line) : line, TextStyle::Body,
                Role::Ink);
    }
    lines->addStretch(1);
    auto *scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidget(body);
    scroll->setAccessibleName(m_paper.title);
    scroll->setFocusPolicy(Qt::StrongFocus);
    column->addWidget(scroll, 1);
}

QPushButton *PaperView::addAct(const QString &text)
{
    auto *button = new QPushButton(text, m_acts);
    button->setProperty("role", "primary");
    button->setAccessibleName(text);
    m_acts->layout()->addWidget(button);
    return button;
}

QString PaperView::text() const
{
    QString text = QString(m_paper.title + QLatin1Char('\n'));
    if (!m_paper.subtitle.isEmpty())
        text += QString(m_paper.subtitle + QLatin1Char('\n'));
    for (const PaperSection &section : m_paper.sections) {
        text += QString(QLatin1Char('\n') + section.heading + QLatin1Char('\n'));
        for (const QString &line : section.lines)
            text += QString(QStringLiteral("- ") + line + QLatin1Char('\n'));
    }
    return text;
}

bool PaperView::saveTo(const QString &path)
{
    const auto problem = writePdf(m_paper, path);
    m_said->setText(problem ? *problem : tr("Saved: %1").arg(path));
    m_said->setVisible(true);
    return !problem;
}

void PaperView::savePdf()
{
    QString name = m_paper.title;
    for (const QChar bad : QStringLiteral("/\\:*?\"<>|"))
        name.replace(bad, QLatin1Char('-'));
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Save the sheet as PDF"),
        QString(folder + QLatin1Char('/') + name + QStringLiteral(".pdf")), tr("PDF (*.pdf)"));
    if (!path.isEmpty())
        saveTo(path);
}

} // namespace rickyard::views
