#include "views/reports/paper_layout.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QTextLayout>

#include <algorithm>
#include <numeric>
#include <tuple>

namespace rickyard::views {

namespace {

constexpr double pt(double points)
{
    return points * kPaperUnit;
}

constexpr double kFoot = pt(26);
constexpr double kWriting = pt(24); // room of a line to write on
constexpr double kBoxGap = pt(19);
constexpr double kCellGap = pt(9);

// What cannot be broken: a line of text, a row of a table. `next` keeps it with the one below.
struct PaperAtom {
    double above = 0; // left out at the head of a page
    double height = 0;
    QVector<PaperMark> marks; // from its own top
    bool next = false;
    int table = -1; // rows get the head of their table again on a new page
    bool head = false;
};

class AtomMaker
{
public:
    explicit AtomMaker(double width) : m_width(width), m_theme(Theme::make(Mode::Light)) {}

    QVector<PaperAtom> make(const Paper &paper)
    {
        paragraph(paper.title, font(20, true), Role::Ink, 0, true);
        if (!paper.subtitle.isEmpty())
            paragraph(paper.subtitle, font(10.5, false), Role::InkMuted, pt(3), true);
        for (const PaperSection &section : paper.sections)
            add(section);
        if (!m_atoms.isEmpty())
            m_atoms.last().next = false;
        return std::move(m_atoms);
    }

    [[nodiscard]] QFont font(double points, bool strong) const
    {
        QFont font = m_theme.font(TextStyle::Body);
        font.setPixelSize(qRound(pt(points)));
        font.setWeight(strong ? QFont::DemiBold : QFont::Normal);
        font.setHintingPreference(QFont::PreferNoHinting);
        return font;
    }

private:
    struct Line {
        QString text;
        double height = 0;
        double baseline = 0;
        double width = 0;
    };

    static QVector<Line> broken(const QString &text, const QFont &font, double width)
    {
        QVector<Line> lines;
        for (const QString &part : text.split(QLatin1Char('\n'))) {
            QTextLayout layout(part, font);
            QTextOption option;
            option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
            layout.setTextOption(option);
            layout.beginLayout();
            for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
                line.setLineWidth(std::max(width, pt(12)));
                lines << Line{part.mid(line.textStart(), line.textLength()).trimmed(),
                              line.height() * 1.12, line.ascent() + line.height() * 0.06,
                              line.naturalTextWidth()};
            }
            layout.endLayout();
        }
        return lines;
    }

    static PaperMark textMark(const Line &line, double x, double y, const QFont &font, Role ink)
    {
        PaperMark mark;
        mark.place = QRectF(x, y, line.width, line.baseline);
        mark.text = line.text;
        mark.font = font;
        mark.ink = ink;
        return mark;
    }
    static PaperMark rule(double x, double y, double width, Role ink)
    {
        PaperMark mark;
        mark.kind = PaperMark::Kind::Rule;
        mark.place = QRectF(x, y, width, 0);
        mark.ink = ink;
        return mark;
    }

    // Line by line; the first two and the last two lines of a paragraph stay together.
    void paragraph(const QString &text, const QFont &font, Role ink, double above, bool next,
                   double indent = 0, std::optional<PaperMark::Kind> box = {})
    {
        const QVector<Line> lines = broken(text, font, m_width - indent);
        for (qsizetype i = 0; i < lines.size(); ++i) {
            PaperAtom atom;
            atom.above = i == 0 ? above : 0;
            atom.height = lines.at(i).height;
            atom.marks << textMark(lines.at(i), indent, 0, font, ink);
            if (box && i == 0)
                atom.marks.prepend(boxMark(*box, lines.at(i)));
            atom.next = i + 1 == lines.size() ? next : i == 0 || i + 2 == lines.size();
            m_atoms << atom;
        }
    }

    static PaperMark boxMark(PaperMark::Kind kind, const Line &line)
    {
        const double edge = pt(9.5);
        PaperMark mark;
        mark.kind = kind;
        mark.place = QRectF(0, line.baseline - edge + pt(1), edge, edge);
        return mark;
    }

    void add(const PaperSection &section)
    {
        const qsizetype first = m_atoms.size();
        const QFont body = font(10.5, false);
        paragraph(section.heading, font(12.5, true), Role::Ink, pt(15), true);
        for (int i = 0; i < section.lines.size(); ++i) {
            const auto box =
                section.ticked.contains(i) ? PaperMark::Kind::TickedBox : PaperMark::Kind::Box;
            paragraph(section.lines.at(i), body, Role::Ink, section.boxes ? pt(6) : pt(3), false,
                      section.boxes ? kBoxGap : 0,
                      section.boxes ? std::optional(box) : std::nullopt);
        }
        if (!section.table.isEmpty())
            addTable(section.table);
        addBlanks(section);
        for (int i = 0; i < section.ruled; ++i) {
            PaperAtom atom;
            atom.height = kWriting;
            atom.marks << rule(0, kWriting, m_width, Role::InkMuted);
            m_atoms << atom;
        }
        for (qsizetype i = first; section.together && i + 1 < m_atoms.size(); ++i)
            m_atoms[i].next = true;
    }

    // The labels stand below each other, and so do the lines behind them.
    void addBlanks(const PaperSection &section)
    {
        const QVector<PaperBlank> &blanks = section.blanks;
        const int abreast = std::max(1, section.abreast);
        const double room = (m_width - kCellGap * 2 * (abreast - 1)) / abreast;
        const QFont body = font(10.5, false);
        const QFont small = font(9.5, false);
        double label = 0;
        double after = 0;
        for (const PaperBlank &blank : blanks) {
            label = std::max(label, QFontMetricsF(body).horizontalAdvance(blank.label));
            after = std::max(after, QFontMetricsF(small).horizontalAdvance(blank.after));
        }
        label = std::min(label, room * 0.45);
        after = std::min(after, room * 0.35);
        for (qsizetype first = 0; first < blanks.size(); first += abreast) {
            PaperAtom atom;
            const QVector<PaperBlank> row = blanks.mid(first, abreast);
            for (const PaperBlank &blank : row)
                for (const auto &[text, look, width] : {std::tuple{blank.label, body, label},
                                                        std::tuple{blank.after, small, after}}) {
                    const QVector<Line> lines = broken(text, look, width);
                    atom.height = std::max(
                        {atom.height, kWriting,
                         static_cast<double>(lines.size()) * lines.first().height + pt(8)});
                }
            for (int i = 0; i < row.size(); ++i)
                addBlank(atom, row.at(i), {i * (room + kCellGap * 2), room, label, after});
            m_atoms << atom;
        }
    }

    struct BlankPlace {
        double x = 0;
        double width = 0;
        double label = 0; // widths of what stands before and behind the line
        double after = 0;
    };

    void addBlank(PaperAtom &atom, const PaperBlank &blank, const BlankPlace &place) const
    {
        const QFont body = font(10.5, false);
        const QFont small = font(9.5, false);
        const double base = atom.height - pt(4);
        const auto write = [&](const QVector<Line> &lines, double x, const QFont &look, Role ink) {
            for (qsizetype i = 0; i < lines.size(); ++i)
                atom.marks << textMark(lines.at(i), x,
                                       base - lines.last().baseline -
                                           static_cast<double>(lines.size() - 1 - i) *
                                               lines.first().height,
                                       look, ink);
        };
        write(broken(blank.label, body, place.label), place.x, body, Role::Ink);
        const double from = place.x + place.label + kCellGap;
        const double to = place.x + place.width - (place.after > 0 ? place.after + kCellGap : 0);
        if (!blank.filled.isEmpty())
            write(broken(blank.filled, body, to - from).mid(0, 1), from, body, Role::Ink);
        atom.marks << rule(from, base + pt(2), to - from, Role::InkMuted);
        if (!blank.after.isEmpty())
            write(broken(blank.after, small, place.after), place.x + place.width - place.after,
                  small, Role::InkMuted);
    }

    struct Column {
        double x = 0;
        double width = 0;
        bool figures = false;
    };

    [[nodiscard]] QVector<Column> columnsOf(const PaperTable &table) const
    {
        QVector<int> shares = table.widths;
        shares.resize(table.head.size(), 1);
        const double all = std::max(1, std::accumulate(shares.begin(), shares.end(), 0));
        QVector<Column> columns;
        double x = 0;
        for (int i = 0; i < table.head.size(); ++i) {
            const double width = m_width * shares.at(i) / all;
            const bool last = i + 1 == table.head.size();
            columns << Column{x, width - (last ? 0 : kCellGap), table.figures.contains(i)};
            x += width;
        }
        return columns;
    }

    PaperAtom rowAtom(const QVector<QVector<Line>> &cells, const QVector<Column> &columns,
                      qsizetype first, qsizetype count, const QFont &font, Role ink) const
    {
        PaperAtom atom;
        const double pad = pt(3);
        for (qsizetype c = 0; c < cells.size(); ++c) {
            double y = pad;
            for (qsizetype i = first; i < std::min(first + count, cells.at(c).size()); ++i) {
                const Line &line = cells.at(c).at(i);
                const double x = columns.at(c).figures
                                     ? columns.at(c).x + columns.at(c).width - line.width
                                     : columns.at(c).x;
                atom.marks << textMark(line, x, y, font, ink);
                y += line.height;
            }
            atom.height = std::max(atom.height, y + pad);
        }
        return atom;
    }

    void addTable(const PaperTable &table)
    {
        const QVector<Column> columns = columnsOf(table);
        const QFont headFont = font(9, true);
        const QFont cellFont = font(9.5, false);
        const auto cellsOf = [&](const QStringList &row, const QFont &font) {
            QVector<QVector<Line>> cells;
            for (int c = 0; c < columns.size(); ++c)
                cells << broken(row.value(c), font, columns.at(c).width);
            return cells;
        };
        const int number = m_tables++;
        constexpr qsizetype all = 10'000;
        PaperAtom head =
            rowAtom(cellsOf(table.head, headFont), columns, 0, all, headFont, Role::InkMuted);
        head.above = pt(5);
        head.marks << rule(0, head.height, m_width, Role::InkMuted);
        head.next = head.head = true;
        head.table = number;
        m_atoms << head;
        for (const QStringList &row : table.rows) {
            const QVector<QVector<Line>> cells = cellsOf(row, cellFont);
            qsizetype most = 0;
            for (const QVector<Line> &cell : cells)
                most = std::max(most, cell.size());
            // A cell longer than a page is the only one that is broken.
            for (qsizetype first = 0; first < most; first += kMostLinesOfRow) {
                PaperAtom atom =
                    rowAtom(cells, columns, first, kMostLinesOfRow, cellFont, Role::Ink);
                atom.marks << rule(0, atom.height, m_width, Role::Hairline);
                atom.table = number;
                m_atoms << atom;
            }
        }
    }

    static constexpr qsizetype kMostLinesOfRow = 30;
    double m_width;
    Theme m_theme;
    QVector<PaperAtom> m_atoms;
    int m_tables = 0;
};

class Paginator
{
public:
    Paginator(QVector<PaperAtom> atoms, double height) : m_atoms(std::move(atoms)), m_room(height)
    {
        for (const PaperAtom &atom : m_atoms)
            if (atom.head)
                m_heads << atom;
    }

    QVector<PaperPage> run()
    {
        m_pages << PaperPage();
        for (qsizetype i = 0; i < m_atoms.size();) {
            const qsizetype end = groupEnd(i);
            if (m_y > 0 && m_y + heightOf(i, end) > m_room)
                turn(m_atoms.at(i));
            for (; i < end; ++i) {
                // A group longer than a page is broken where it must be.
                if (m_y > 0 && m_y + m_atoms.at(i).above + m_atoms.at(i).height > m_room)
                    turn(m_atoms.at(i));
                put(m_atoms.at(i));
            }
        }
        return std::move(m_pages);
    }

private:
    [[nodiscard]] qsizetype groupEnd(qsizetype from) const
    {
        qsizetype end = from;
        while (end < m_atoms.size() && m_atoms.at(end).next)
            ++end;
        return std::min(end + 1, m_atoms.size());
    }
    [[nodiscard]] double heightOf(qsizetype from, qsizetype end) const
    {
        double height = 0;
        for (qsizetype i = from; i < end; ++i)
            height += m_atoms.at(i).above + m_atoms.at(i).height;
        return height;
    }
    void turn(const PaperAtom &first)
    {
        m_pages << PaperPage();
        m_y = 0;
        if (first.table >= 0 && !first.head)
            put(m_heads.at(first.table));
    }
    void put(const PaperAtom &atom)
    {
        if (m_y > 0)
            m_y += atom.above;
        for (PaperMark mark : atom.marks) {
            mark.place.translate(0, m_y);
            m_pages.last().marks << mark;
        }
        m_y += atom.height;
    }

    QVector<PaperAtom> m_atoms;
    QVector<PaperAtom> m_heads;
    double m_room;
    QVector<PaperPage> m_pages;
    double m_y = 0;
};

// The title again on every page but the first, the foot and the number of the page.
void addFeet(QVector<PaperPage> &pages, const Paper &paper, const QSizeF &page, const QFont &font)
{
    const QFontMetricsF metrics(font);
    const double y = page.height() - metrics.height();
    for (int i = 0; i < pages.size(); ++i) {
        const auto add = [&](const QString &text, bool right) {
            const QString shown = metrics.elidedText(text, Qt::ElideRight, page.width() * 0.48);
            const double width = metrics.horizontalAdvance(shown);
            PaperMark mark;
            mark.place = QRectF(right ? page.width() - width : 0, y, width, metrics.ascent());
            mark.text = shown;
            mark.font = font;
            mark.ink = Role::InkMuted;
            pages[i].marks << mark;
        };
        if (!paper.foot.isEmpty())
            add(paper.foot, false);
        const QString number =
            QCoreApplication::translate("Paper", "page %1 of %2").arg(i + 1).arg(pages.size());
        add(QString(paper.title + QStringLiteral(" · ") + number), true);
    }
}

} // namespace

QStringList PaperPage::texts() const
{
    QStringList texts;
    for (const PaperMark &mark : marks)
        if (mark.kind == PaperMark::Kind::Text && !mark.text.isEmpty())
            texts << mark.text;
    return texts;
}

QVector<PaperPage> layOutPaper(const Paper &paper, const QSizeF &page)
{
    AtomMaker maker(page.width());
    QVector<PaperPage> pages =
        Paginator(maker.make(paper), std::max(pt(100), page.height() - kFoot)).run();
    addFeet(pages, paper, page, maker.font(8, false));
    return pages;
}

} // namespace rickyard::views
