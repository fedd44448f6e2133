#include "views/fire/compare_rows.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/theme/number_style.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QString compareText(const char *text)
{
    return QCoreApplication::translate("Compare", text);
}

// The words for more and for less of something.
struct MoreOrLess {
    QString more;
    QString less;
};

class RowWriter
{
public:
    RowWriter(const Books &books, const ComparedCook &a, const ComparedCook &b)
        : m_books(books), m_words(books), m_a(a), m_b(b)
    {
    }
    QVector<CompareRow> rows()
    {
        times();
        weatherAndFood();
        wood();
        tending();
        return m_rows;
    }

private:
    void heading(const QString &text) { m_rows.append({text, {}, {}, {}, {}, false}); }
    void row(const QString &label, const QString &a, const QString &b, const QString &difference)
    {
        if (a.isEmpty() && b.isEmpty())
            return;
        const auto shown = [](const QString &text) {
            return text.isEmpty() ? missingMark() : text;
        };
        m_rows.append({{}, label, shown(a), shown(b), difference, a != b && !difference.isEmpty()});
    }
    // Words that are alike or not.
    void words(const QString &label, const QString &a, const QString &b)
    {
        row(label, a, b,
            a.isEmpty() || b.isEmpty() ? QString()
            : a == b                   ? compareText("the same")
                                       : compareText("not the same"));
    }
    // A figure of both; `text` shows a value, `gap` a difference without its sign.
    template <class T, class Text>
    void figures(const QString &label, const std::optional<T> &a, const std::optional<T> &b,
                 const Text &text, const MoreOrLess &way)
    {
        const QString left = a ? text(*a) : QString();
        const QString right = b ? text(*b) : QString();
        QString difference;
        if (a && b)
            difference = left == right
                             ? compareText("the same")
                             : QString(text(*b > *a ? *b - *a : *a - *b) + QLatin1Char(' ') +
                                       (*b > *a ? way.more : way.less));
        row(label, left, right, difference);
    }
    [[nodiscard]] std::optional<Duration> after(const Cook &cook,
                                                const std::optional<Instant> &at) const
    {
        return at ? std::optional(*at - cook.lit) : std::nullopt;
    }
    [[nodiscard]] QString choice(const char *key, const Cook &cook) const
    {
        const TableSpec &spec = specOf(TableId::Cook);
        const int at = spec.indexOf(QLatin1String(key));
        return displayText(m_books, spec.fields.at(at), toRow(cook).values.at(at),
                           m_words.locale());
    }

    void times()
    {
        const Cook &a = m_a.record;
        const Cook &b = m_b.record;
        const auto span = [](Duration d) { return FireWords::span(d); };
        const MoreOrLess longer{compareText("longer"), compareText("shorter")};
        const MoreOrLess later{compareText("later"), compareText("sooner")};
        heading(compareText("Times"));
        row(compareText("Lit"), items::timeText(m_books, a.lit, m_words.locale()),
            items::timeText(m_books, b.lit, m_words.locale()), {});
        words(compareText("Pit"), m_books.pits.value(a.pit).name, m_books.pits.value(b.pit).name);
        words(compareText("Start"), choice("start", a), choice("start", b));
        figures(compareText("At temperature after"), after(a, a.atTemperature),
                after(b, b.atTemperature), span, later);
        figures(compareText("Food on after"), after(a, a.foodOn), after(b, b.foodOn), span, later);
        figures(compareText("Food off after"), after(a, a.foodOff), after(b, b.foodOff), span,
                later);
        figures(compareText("Lighting to fire out"), after(a, a.fireOut), after(b, b.fireOut), span,
                longer);
    }

    [[nodiscard]] QString temperature(Temperature t) const { return m_words.temperature(t).text(); }
    void degrees(const QString &label, const std::optional<Temperature> &a,
                 const std::optional<Temperature> &b, const MoreOrLess &way)
    {
        const QString left = a ? temperature(*a) : QString();
        const QString right = b ? temperature(*b) : QString();
        QString difference;
        if (a && b) {
            // A difference of degrees has no zero of its own to count from.
            const Unit &unit = m_words.unit(Dimension::Temperature);
            const double gap = std::abs((*b - *a).toDouble()) / unit.scale;
            difference =
                left == right
                    ? compareText("the same")
                    : QString(withUnit(formatNumber(std::max(1.0, gap), 0, m_words.locale()),
                                       unit.symbol) +
                              QLatin1Char(' ') + (*b > *a ? way.more : way.less));
        }
        row(label, left, right, difference);
    }

    void weatherAndFood()
    {
        heading(compareText("Weather and food"));
        degrees(compareText("Outside, mean"), m_a.fuel.meanOutside, m_b.fuel.meanOutside,
                {compareText("warmer"), compareText("colder")});
        figures(compareText("Wind, mean"), m_a.fuel.meanWind, m_b.fuel.meanWind,
                [this](Speed s) {
                    return formatQuantity(s.base(), m_words.unit(Dimension::Speed),
                                          m_words.locale());
                },
                {compareText("more"), compareText("less")});
        words(compareText("Food"), m_a.record.foods, m_b.record.foods);
        figures(compareText("Food weight"), m_a.record.foodMass, m_b.record.foodMass,
                [this](Mass m) { return m_words.mass(m).text(); },
                {compareText("more"), compareText("less")});
    }

    [[nodiscard]] QString lotsOf(const ComparedCook &cook) const
    {
        QStringList lines;
        for (const CookWoodLine &line : cook.wood.lots) {
            QString text = m_books.lots.value(line.lot).name;
            if (cook.wood.lots.size() > 1 && line.pieces)
                text += compareText(", %1 splits").arg(*line.pieces);
            lines << text;
        }
        return lines.join(QLatin1Char('\n'));
    }
    static std::optional<Heat> burned(const ComparedCook &cook)
    {
        return cook.wood.whole.netHeat > Heat() ? std::optional(cook.wood.whole.netHeat)
                                                : std::nullopt;
    }
    static std::optional<Heat> hourly(const ComparedCook &cook)
    {
        const double length = hours(cook.fuel.length);
        return burned(cook) && length > 0 ? std::optional(*burned(cook) * (1.0 / length))
                                          : std::nullopt;
    }

    void wood()
    {
        const MoreOrLess more{compareText("more"), compareText("less")};
        const auto heat = [this](Heat h) { return m_words.heat(h).text(); };
        const Wording wording = wordingOf(m_books);
        heading(compareText("Wood"));
        words(compareText("Lots"), lotsOf(m_a), lotsOf(m_b));
        figures(
            compareText("Splits"), m_a.wood.whole.pieces, m_b.wood.whole.pieces,
            [](int n) { return QString::number(n); }, more);
        figures(
            compareText("As it was handled"), m_a.wood.whole.asIs, m_b.wood.whole.asIs,
            [this](Mass m) { return m_words.mass(m).text(); }, more);
        moisture();
        figures(compareText("Used"), burned(m_a), burned(m_b), heat, more);
        figures(
            compareText("Used an hour"), hourly(m_a), hourly(m_b),
            [this](Heat h) { return m_words.heat(h, 1).text(); }, more);
        figures(compareText("Expected"), m_a.fuel.expected, m_b.fuel.expected, heat, more);
        const auto excess = [this](const ComparedCook &cook) {
            return cook.fuel.excess ? m_words.percent(*cook.fuel.excess) : QString();
        };
        row(compareText("Against expected"), excess(m_a), excess(m_b), {});
        figures(compareText("Cost of the wood"), m_a.wood.whole.cents, m_b.wood.whole.cents,
                [&](double cents) { return moneyWords(cents, wording); },
                {compareText("dearer"), compareText("cheaper")});
    }

    void moisture()
    {
        const auto percent = [this](Moisture m) {
            return formatNumber(100 * dryFraction(m), 1, m_words.locale());
        };
        const std::optional<Moisture> &a = m_a.wood.whole.moisture;
        const std::optional<Moisture> &b = m_b.wood.whole.moisture;
        const QString left = a ? withUnit(percent(*a), QStringLiteral("%")) : QString();
        const QString right = b ? withUnit(percent(*b), QStringLiteral("%")) : QString();
        QString difference;
        if (a && b) // per cent of per cent would be read wrongly
            difference = left == right ? compareText("the same")
                         : *b > *a     ? compareText("%1 points wetter").arg(percent(*b - *a))
                                       : compareText("%1 points drier").arg(percent(*a - *b));
        row(compareText("Moisture, dry basis"), left, right, difference);
    }

    void tending()
    {
        heading(compareText("Tending"));
        const auto span = [](Duration d) { return FireWords::span(d); };
        const auto several = [](int n) { return n > 0 ? std::optional(n) : std::nullopt; };
        degrees(compareText("Pit, mean"), m_a.fuel.meanPit, m_b.fuel.meanPit,
                {compareText("hotter"), compareText("cooler")});
        degrees(compareText("Target"), m_a.record.target, m_b.record.target,
                {compareText("hotter"), compareText("cooler")});
        figures(compareText("Feeds"), several(m_a.rhythm.feedings), several(m_b.rhythm.feedings),
                [](int n) { return QString::number(n); },
                {compareText("more"), compareText("fewer")});
        figures(compareText("Mean time between"), m_a.rhythm.meanInterval, m_b.rhythm.meanInterval,
                span, {compareText("longer"), compareText("shorter")});
        figures(compareText("Longest gap"), m_a.rhythm.longestGap, m_b.rhythm.longestGap, span,
                {compareText("longer"), compareText("shorter")});
        row(compareText("Noted"), m_a.notes.join(QLatin1Char('\n')),
            m_b.notes.join(QLatin1Char('\n')), {});
        row(compareText("Note"), m_a.record.note, m_b.record.note, {});
    }

    const Books &m_books;
    FireWords m_words;
    const ComparedCook &m_a;
    const ComparedCook &m_b;
    QVector<CompareRow> m_rows;
};

} // namespace

ComparedCook comparedCook(const Books &books, const QVector<CookFuel> &cooks, RecordId id,
                          Instant now)
{
    ComparedCook cook;
    cook.record = books.cooks.value(id);
    cook.fuel.cook = id;
    cook.fuel.pit = cook.record.pit;
    cook.fuel.length = cook.record.fireOut.value_or(now) - cook.record.lit;
    for (const CookFuel &fuel : cooks)
        if (fuel.cook == id)
            cook.fuel = fuel;
    cook.wood = cookWood(books, id, now);
    cook.rhythm = feedRhythm(books, id, now);
    QVector<CookNote> notes;
    for (const CookNote &note : books.notes)
        if (note.cook == id)
            notes << note;
    std::stable_sort(notes.begin(), notes.end(),
                     [](const CookNote &a, const CookNote &b) { return a.time < b.time; });
    const FireWords words(books);
    const TableSpec &spec = specOf(TableId::CookNote);
    const FieldSpec &kind = spec.fields.at(spec.indexOf(QStringLiteral("kind")));
    for (const CookNote &note : std::as_const(notes)) {
        QStringList parts;
        if (note.kind != NoteKind::Remark || note.text.isEmpty())
            parts << kind.choices.at(static_cast<int>(note.kind)).label;
        if (!note.text.isEmpty())
            parts << note.text;
        cook.notes << QStringLiteral("%1 %2").arg(FireWords::span(note.time - cook.record.lit),
                                                  parts.join(QStringLiteral(": ")));
    }
    return cook;
}

QVector<CompareRow> compareRows(const Books &books, const ComparedCook &first,
                                const ComparedCook &second)
{
    return RowWriter(books, first, second).rows();
}

QVector<SentencePart> compareSentence(const Books &books, const ComparedCook &first,
                                      const ComparedCook &second)
{
    const FireWords words(books);
    const Heat a = first.wood.whole.netHeat;
    const Heat b = second.wood.whole.netHeat;
    const QString nameA = cookTitle(books, first.record);
    const QString nameB = cookTitle(books, second.record);
    if (a <= Heat() || b <= Heat())
        return {{compareText("No wood is logged for %1.").arg(a <= Heat() ? nameA : nameB)}};
    const auto gap = [&](Heat from, Heat to, int decimals) {
        return words.heat(to > from ? to - from : from - to, decimals);
    };
    const Figure whole = gap(a, b, 0);
    QVector<SentencePart> parts{{compareText("The second took ")}};
    if (whole.value == words.heat(Heat()).value)
        parts.append({compareText("as much wood as the first"), true});
    else
        parts << SentencePart{QString(whole.text() + QLatin1Char(' ') +
                                      (b > a ? compareText("more") : compareText("less"))),
                              true}
              << SentencePart{compareText(" than the first")};
    const double lengthA = hours(first.fuel.length);
    const double lengthB = hours(second.fuel.length);
    if (lengthA > 0 && lengthB > 0) {
        const Heat hourA = a * (1.0 / lengthA);
        const Heat hourB = b * (1.0 / lengthB);
        const Figure hour = gap(hourA, hourB, 1);
        if (hour.value == words.heat(Heat(), 1).value)
            parts.append({compareText(", and as much an hour.")});
        else
            parts << SentencePart{compareText(", ")} << SentencePart{hour.value, true}
                  << SentencePart{hourB > hourA ? compareText(" more an hour.")
                                                : compareText(" less an hour.")};
    } else {
        parts.append({QStringLiteral(".")});
    }
    return parts;
}

} // namespace rickyard::views
