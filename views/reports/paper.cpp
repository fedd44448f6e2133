#include "views/reports/paper.h"

#include "views/reports/paper_layout.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QLocale>
#include <QPainter>
#include <QPdfWriter>
#include <QPrintDialog>
#include <QPrinter>

#include <algorithm>

namespace rickyard::views {

namespace {

constexpr double kMarginMillimetres = 18;
constexpr qsizetype kWidestText = 40; // letters a column is filled up to

// Letter where inches are usual, A4 elsewhere.
QPageSize pageOf(const QLocale &locale)
{
    return QPageSize(locale.measurementSystem() == QLocale::ImperialUSSystem ? QPageSize::Letter
                                                                             : QPageSize::A4);
}

QString paperWords(const char *text)
{
    return QCoreApplication::translate("Paper", text);
}

void paintMark(QPainter &painter, const PaperMark &mark, const Theme &light)
{
    const QColor ink = light.color(mark.ink);
    const QRectF &place = mark.place;
    switch (mark.kind) {
    case PaperMark::Kind::Text:
        painter.setPen(ink);
        painter.setFont(mark.font);
        painter.drawText(place.bottomLeft(), mark.text);
        break;
    case PaperMark::Kind::Rule:
        painter.setPen(QPen(ink, kPaperUnit * 0.6));
        painter.drawLine(place.topLeft(), place.topRight());
        break;
    case PaperMark::Kind::TickedBox:
        painter.setPen(QPen(ink, kPaperUnit * 1.4));
        painter.drawPolyline(
            QPolygonF{{place.left() + place.width() * 0.2, place.top() + place.height() * 0.5},
                      {place.left() + place.width() * 0.42, place.top() + place.height() * 0.75},
                      {place.left() + place.width() * 0.85, place.top() + place.height() * 0.2}});
        [[fallthrough]];
    case PaperMark::Kind::Box:
        painter.setPen(QPen(ink, kPaperUnit * 0.8));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(place);
        break;
    }
}

QString padded(const QString &text, qsizetype width, bool figures)
{
    return figures ? text.rightJustified(width) : text.leftJustified(width);
}

QStringList tableLines(const PaperTable &table)
{
    QVector<qsizetype> widths;
    for (int c = 0; c < table.head.size(); ++c) {
        qsizetype width = table.head.at(c).size();
        for (const QStringList &row : table.rows)
            width = std::max(width, row.value(c).size());
        widths << std::min(width, kWidestText);
    }
    QStringList lines;
    const auto line = [&](const QStringList &row) {
        QStringList cells;
        for (int c = 0; c < widths.size(); ++c)
            cells << padded(QString(row.value(c)).replace(QLatin1Char('\n'), QLatin1Char(' ')),
                            widths.at(c), table.figures.contains(c));
        QString text = cells.join(QStringLiteral("  "));
        while (text.endsWith(QLatin1Char(' ')))
            text.chop(1);
        lines << text;
    };
    line(table.head);
    for (const QStringList &row : table.rows)
        line(row);
    return lines;
}

} // namespace

QString paperText(const Paper &paper)
{
    QStringList text{paper.title};
    if (!paper.subtitle.isEmpty())
        text << paper.subtitle;
    for (const PaperSection &section : paper.sections) {
        text << QString() << section.heading;
        for (int i = 0; i < section.lines.size(); ++i) {
            const QString mark = !section.boxes               ? QStringLiteral("- ")
                                 : section.ticked.contains(i) ? QStringLiteral("[x] ")
                                                              : QStringLiteral("[ ] ");
            text << QString(mark + section.lines.at(i));
        }
        if (!section.table.isEmpty())
            text += tableLines(section.table);
        for (const PaperBlank &blank : section.blanks) {
            QString line =
                QString(blank.label + QStringLiteral(": ") +
                        (blank.filled.isEmpty() ? QStringLiteral("________") : blank.filled));
            if (!blank.after.isEmpty())
                line += QString(QStringLiteral("  ") + blank.after);
            text << line;
        }
        for (int i = 0; i < section.ruled; ++i)
            text << QStringLiteral("________________");
    }
    return QString(text.join(QLatin1Char('\n')) + QLatin1Char('\n'));
}

int paintPaper(QPagedPaintDevice &device, const Paper &paper)
{
    QPainter painter;
    if (!painter.begin(&device))
        return 0;
    const double scale = device.logicalDpiX() / 72.0 / kPaperUnit;
    const QVector<PaperPage> pages =
        layOutPaper(paper, QSizeF(device.width() / scale, device.height() / scale));
    const Theme light = Theme::make(Mode::Light);
    for (int i = 0; i < pages.size(); ++i) {
        if (i > 0)
            device.newPage();
        painter.save();
        painter.scale(scale, scale);
        for (const PaperMark &mark : pages.at(i).marks)
            paintMark(painter, mark, light);
        painter.restore();
    }
    painter.end();
    return static_cast<int>(pages.size());
}

std::optional<QString> writePdf(const Paper &paper, const QString &path)
{
    QPdfWriter writer(path);
    writer.setTitle(paper.title);
    writer.setPageSize(pageOf(QLocale()));
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
