#include "views/reports/paper_view.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"

#include <QClipboard>
#include <QFileDialog>
#include <QGuiApplication>
#include <QPushButton>
#include <QStandardPaths>
#include <QTextEdit>
#include <QTextTable>
#include <QVBoxLayout>

namespace rickyard::views {

namespace {

// The paper in the window's own colours and sizes.
class PaperScreen
{
public:
    PaperScreen(const Theme &look, QTextDocument &document) : m_look(look), m_cursor(&document)
    {
        document.setDocumentMargin(0);
    }

    void fill(const Paper &paper)
    {
        block(paper.title, TextStyle::Title, Role::Ink, 0);
        if (!paper.subtitle.isEmpty())
            block(paper.subtitle, TextStyle::Body, Role::InkMuted, 1);
        for (const PaperSection &section : paper.sections)
            add(section);
    }

private:
    QTextCharFormat letters(TextStyle style, Role role) const
    {
        QTextCharFormat format;
        format.setFont(m_look.font(style));
        format.setForeground(m_look.color(role));
        return format;
    }

    void block(const QString &text, TextStyle style, Role role, int above)
    {
        QTextBlockFormat format;
        format.setTopMargin(above > 0 ? m_look.space(above) : 0);
        if (m_started)
            m_cursor.insertBlock(format);
        else
            m_cursor.setBlockFormat(format);
        m_started = true;
        m_cursor.insertText(text, letters(style, role));
    }

    void add(const PaperSection &section)
    {
        block(section.heading, TextStyle::Heading, Role::Ink, 4);
        for (int i = 0; i < section.lines.size(); ++i) {
            const QString box = !section.boxes               ? QString()
                                : section.ticked.contains(i) ? QStringLiteral("☑  ")
                                                             : QStringLiteral("☐  ");
            block(QString(box + section.lines.at(i)), TextStyle::Body, Role::Ink, 1);
        }
        if (!section.table.isEmpty())
            addTable(section.table);
        for (const PaperBlank &blank : section.blanks) {
            QString line =
                QString(blank.label + QStringLiteral(": ") +
                        (blank.filled.isEmpty() ? QStringLiteral("________") : blank.filled));
            if (!blank.after.isEmpty())
                line += QString(QStringLiteral("  ") + blank.after);
            block(line, TextStyle::Body, Role::Ink, 1);
        }
    }

    void addTable(const PaperTable &table)
    {
        QTextTableFormat format;
        format.setBorder(0);
        format.setCellPadding(m_look.px(3));
        format.setHeaderRowCount(1);
        format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
        QTextTable *grid = m_cursor.insertTable(static_cast<int>(table.rows.size()) + 1,
                                                static_cast<int>(table.head.size()), format);
        for (int r = 0; r <= table.rows.size(); ++r)
            for (int c = 0; c < table.head.size(); ++c) {
                QTextCursor cell = grid->cellAt(r, c).firstCursorPosition();
                QTextBlockFormat side;
                if (table.figures.contains(c))
                    side.setAlignment(Qt::AlignRight);
                cell.setBlockFormat(side);
                cell.insertText(r == 0 ? table.head.at(c) : table.rows.at(r - 1).value(c),
                                r == 0 ? letters(TextStyle::Label, Role::InkMuted)
                                       : letters(TextStyle::Figures, Role::Ink));
            }
        m_cursor.movePosition(QTextCursor::End);
    }

    const Theme &m_look;
    QTextCursor m_cursor;
    bool m_started = false;
};

} // namespace

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
    auto *body = new QTextEdit;
    body->setReadOnly(true);
    body->setTabChangesFocus(true);
    body->setFrameShape(QFrame::NoFrame);
    body->setAccessibleName(m_paper.title);
    PaperScreen(theme(this), *body->document()).fill(m_paper);
    body->moveCursor(QTextCursor::Start);
    column->addWidget(body, 1);
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
    return paperText(m_paper);
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
