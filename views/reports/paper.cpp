#include "views/reports/paper.h"

#include "views/theme/theme.h"

#include <QAbstractTextDocumentLayout>
#include <QCoreApplication>
#include <QFileInfo>
#include <QPainter>
#include <QPdfWriter>
#include <QPrintDialog>
#include <QPrinter>
#include <QTextCursor>
#include <QTextDocument>

namespace rickyard::views {

namespace {

constexpr double kMarginMillimetres = 18;
constexpr int kBodyPoints = 11;
constexpr int kHeadingPoints = 13;
constexpr int kTitlePoints = 20;

QString paperWords(const char *text)
{
    return QCoreApplication::translate("Paper", text);
}

QTextCharFormat letters(int points, bool strong, const QColor &ink)
{
    QTextCharFormat format;
    format.setFontPointSize(points);
    format.setFontWeight(strong ? QFont::DemiBold : QFont::Normal);
    format.setForeground(ink);
    return format;
}

QTextBlockFormat block(double above)
{
    QTextBlockFormat format;
    format.setTopMargin(above);
    format.setLineHeight(125, QTextBlockFormat::ProportionalHeight);
    format.setNonBreakableLines(true);
    return format;
}

void addBlock(QTextCursor &cursor, const QString &text, const QTextBlockFormat &format,
              const QTextCharFormat &look)
{
    if (cursor.position() > 0)
        cursor.insertBlock();
    cursor.setBlockFormat(format);
    cursor.setBlockCharFormat(look);
    cursor.insertText(text, look);
}

} // namespace

void fillDocument(QTextDocument &document, const Paper &paper)
{
    const Theme light = Theme::make(Mode::Light);
    const QColor ink = light.color(Role::Ink);
    const QColor muted = light.color(Role::InkMuted);
    document.setDocumentMargin(0);
    QTextCursor cursor(&document);
    addBlock(cursor, paper.title, block(0), letters(kTitlePoints, true, ink));
    if (!paper.subtitle.isEmpty())
        addBlock(cursor, paper.subtitle, block(2), letters(kBodyPoints, false, muted));
    for (const PaperSection &section : paper.sections) {
        addBlock(cursor, section.heading, block(14), letters(kHeadingPoints, true, ink));
        for (const QString &line : section.lines)
            addBlock(cursor, section.boxes ? QString(QStringLiteral("☐  ") + line) : line, block(3),
                     letters(kBodyPoints, false, ink));
    }
}

int paintPaper(QPagedPaintDevice &device, const Paper &paper)
{
    QPainter painter;
    if (!painter.begin(&device))
        return 0;
    // Laid out in points, painted at the device's own resolution.
    const double scale = device.logicalDpiX() / 72.0;
    const QSizeF page(device.width() / scale, device.height() / scale);
    const double foot = 24;
    QTextDocument document;
    document.documentLayout()->setPaintDevice(nullptr);
    fillDocument(document, paper);
    document.setPageSize({page.width(), page.height() - foot});
    const int pages = document.pageCount();
    const Theme light = Theme::make(Mode::Light);
    for (int i = 0; i < pages; ++i) {
        if (i > 0)
            device.newPage();
        painter.save();
        painter.scale(scale, scale);
        painter.save();
        painter.translate(0, -i * document.pageSize().height());
        document.drawContents(&painter, QRectF(0, i * document.pageSize().height(), page.width(),
                                               document.pageSize().height()));
        painter.restore();
        painter.setPen(light.color(Role::InkMuted));
        QFont small = painter.font();
        small.setPointSizeF(8.5 * 72.0 / 96.0);
        painter.setFont(small);
        painter.drawText(QRectF(0, page.height() - foot, page.width(), foot),
                         Qt::AlignRight | Qt::AlignBottom,
                         paperWords("%1 · page %2 of %3").arg(paper.title).arg(i + 1).arg(pages));
        painter.restore();
    }
    painter.end();
    return pages;
}

std::optional<QString> writePdf(const Paper &paper, const QString &path)
{
    QPdfWriter writer(path);
    writer.setTitle(paper.title);
    writer.setPageMargins(
        QMarginsF(kMarginMillimetres, kMarginMillimetres, kMarginMillimetres, kMarginMillimetres),
        QPageLayout::Millimeter);
    if (paintPaper(writer, paper) > 0)
        return std::nullopt;
    return paperWords("%1 cannot be written. Choose another folder, or make room on the disk.")
        .arg(QFileInfo(path).fileName());
}

bool printPaper(const Paper &paper, QWidget *parent)
{
    QPrinter printer;
    printer.setDocName(paper.title);
    printer.setPageMargins(
        QMarginsF(kMarginMillimetres, kMarginMillimetres, kMarginMillimetres, kMarginMillimetres),
        QPageLayout::Millimeter);
    QPrintDialog dialog(&printer, parent);
    if (dialog.exec() != QDialog::Accepted)
        return false;
    paintPaper(printer, paper);
    return true;
}

} // namespace rickyard::views
