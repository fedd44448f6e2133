// What the program puts on paper: a title, headed sections of lines, page numbers. Always in the
// light theme, plain text throughout.
#pragma once

#include <QString>
#include <QVector>

#include <optional>

class QPagedPaintDevice;
class QTextDocument;
class QWidget;

namespace rickyard::views {

struct PaperSection {
    QString heading;
    QStringList lines;
    bool boxes = false; // a box to tick before each line
};

struct Paper {
    QString title;
    QString subtitle;
    QVector<PaperSection> sections;
};

// The text of it, laid out for a width in points; the owner of the document lays it on pages.
void fillDocument(QTextDocument &document, const Paper &paper);
// Page after page with a foot line. The number of pages, 0 when the device cannot be painted on.
int paintPaper(QPagedPaintDevice &device, const Paper &paper);
// Gives the reason when the file cannot be written.
std::optional<QString> writePdf(const Paper &paper, const QString &path);
// The system's print dialog; false when it was cancelled.
bool printPaper(const Paper &paper, QWidget *parent);

} // namespace rickyard::views
