// What the program puts on paper: a title and headed sections of lines, boxes to tick, tables and
// lines to write on, with page numbers. Always in the light theme, plain text throughout.
#pragma once

#include <QString>
#include <QVector>

#include <optional>

class QPagedPaintDevice;
class QWidget;

namespace rickyard::views {

struct PaperTable {
    QStringList head;
    QVector<QStringList> rows;
    QVector<int> widths = {};  // each column's share of the page; empty: all the same
    QVector<int> figures = {}; // columns that are set to the right
    [[nodiscard]] bool isEmpty() const { return rows.isEmpty(); }
};

// A line to write on.
struct PaperBlank {
    QString label;       // before it
    QString after = {};  // behind it: the limits, the unit
    QString filled = {}; // what is written on it already
};

struct PaperSection {
    QString heading;
    QStringList lines = {};
    bool boxes = false;              // a box to tick before each line
    QVector<int> ticked = {};        // lines whose box is ticked, from 0
    PaperTable table = {};           // below the lines
    QVector<PaperBlank> blanks = {}; // below those
    int abreast = 1;                 // so many of the blanks beside each other
    int ruled = 0;                   // empty lines to write on, at the end
    bool together = false;           // on one page, if it fits on one
};

struct Paper {
    QString title;
    QString subtitle;
    QVector<PaperSection> sections;
    QString foot = {}; // on every page, at the left of the page's number
};

// The whole of it as plain text: copied into a message, compared in tests.
QString paperText(const Paper &paper);

// Page after page with a foot line. The number of pages, 0 when the device cannot be painted on.
int paintPaper(QPagedPaintDevice &device, const Paper &paper);
// Gives the reason when the file cannot be written.
std::optional<QString> writePdf(const Paper &paper, const QString &path);
// The system's print dialog; false when it was cancelled.
bool printPaper(const Paper &paper, QWidget *parent);

} // namespace rickyard::views
