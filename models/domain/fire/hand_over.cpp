#include "models/domain/fire/hand_over.h"

#include "models/domain/answers/wording.h"
#include "models/domain/fire/wood_left.h"
#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/blocks.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/stock.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr Duration kNotesBack = Duration::ofBase(12 * 3600);
constexpr int kMostNotes = 12;
constexpr int kMostTemperatures = 4;
// Below this chance that the wood reaches the end it is a worry.
constexpr double kSureEnough = 0.9;

class Writer
{
public:
    Writer(const Books &books, const FuelAnswer &fuel, const UpkeepAnswer &upkeep, const Cook &cook,
           RecordId lot, Instant now, const Wording &wording)
        : m_books(books), m_fuel(fuel), m_upkeep(upkeep), m_cook(cook), m_lot(lot), m_now(now),
          m_wording(wording)
    {
        if (m_lot == 0)
            m_lot = lastFeed() == nullptr ? 0 : lastFeed()->lot;
    }
    HandOver write()
    {
        HandOver sheet;
        sheet.title = QString(m_books.pits.value(m_cook.pit).name + QStringLiteral(", ") +
                              dayWithWeekday(dayOf(m_now, zoneOf(m_wording)), m_wording) +
                              QStringLiteral(", ") + clock(m_now));
        const auto put = [&sheet](const char *heading, const QStringList &lines) {
            if (!lines.isEmpty())
                sheet.sections << HandOverSection{QString::fromUtf8(heading), lines};
        };
        put("The fire", fire());
        put("Wood", wood());
        put("Temperature", temperatures());
        put("Noted", notes());
        put("Worries", worries());
        return sheet;
    }

private:
    // With its weekday where the time of day alone would leave a doubt.
    [[nodiscard]] QString clock(Instant t) const
    {
        const bool near = std::abs((t - m_now).base()) < 12LL * 3600;
        return localeOf(m_wording).toString(
            QDateTime::fromSecsSinceEpoch(t.seconds(), zoneOf(m_wording)),
            near ? QStringLiteral("h:mm AP") : QStringLiteral("ddd h:mm AP"));
    }
    [[nodiscard]] QString temperature(Temperature t) const
    {
        return show(t, m_wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
                    localeOf(m_wording), 0);
    }
    [[nodiscard]] const Feed *lastFeed() const
    {
        const Feed *last = nullptr;
        for (const Feed &feed : m_books.feeds)
            if (feed.cook == m_cook.id && feed.time <= m_now &&
                (last == nullptr || feed.time >= last->time))
                last = &feed;
        return last;
    }
    [[nodiscard]] QStringList fire() const;
    [[nodiscard]] QStringList wood();
    [[nodiscard]] QStringList temperatures() const;
    [[nodiscard]] QStringList notes() const;
    [[nodiscard]] QStringList worries() const;

    const Books &m_books;
    const FuelAnswer &m_fuel;
    const UpkeepAnswer &m_upkeep;
    const Cook &m_cook;
    RecordId m_lot;
    Instant m_now;
    const Wording &m_wording;
    std::optional<WoodLeft> m_left;
};

QStringList Writer::fire() const
{
    QStringList lines;
    QString burning = QString(QStringLiteral("Lit ") + clock(m_cook.lit) + QStringLiteral(", ") +
                              formatDuration(m_now - m_cook.lit) + QStringLiteral(" ago"));
    if (!m_cook.foods.isEmpty())
        burning += QString(QStringLiteral("; ") + m_cook.foods);
    lines << burning;
    QStringList times;
    const auto mark = [&](const char *what, const std::optional<Instant> &time) {
        if (time)
            times << QString(QString::fromUtf8(what) + QLatin1Char(' ') + clock(*time));
    };
    mark("at temperature", m_cook.atTemperature);
    mark("food on", m_cook.foodOn);
    mark("food off", m_cook.foodOff);
    if (!times.isEmpty())
        lines << times.join(QStringLiteral(", "));
    if (const auto end = expectedEnd(m_books, m_cook, m_now))
        lines << QString(QStringLiteral("Fire out about ") + clock(end->time) +
                         (end->assumed ? QStringLiteral(" (assumed: nothing is planned)")
                                       : QStringLiteral(" by the plan")));
    return lines;
}

QStringList Writer::wood()
{
    QStringList lines;
    const auto pace = feedPace(m_books, m_cook, m_now);
    if (pace) {
        lines << QString(
            QStringLiteral("Last fed ") + clock(pace->lastFeed) + QStringLiteral(", next about ") +
            clock(pace->lastFeed + pace->interval) + QStringLiteral(" (every ") +
            QString::number((pace->interval.base() + 30) / 60) + QStringLiteral(" min)"));
    } else if (const Feed *last = lastFeed()) {
        lines << QString(QStringLiteral("Last fed ") + clock(last->time) +
                         QStringLiteral("; the next is reckoned after three feeds"));
    }
    if (m_lot == 0)
        return lines;
    const Lot lot = m_books.lots.value(m_lot);
    const LotStock stock = lotStockAt(m_books, m_lot, m_now);
    QString from = QString(QStringLiteral("From ") + lot.name + QStringLiteral(": ") +
                           heatWords(stock.netHeat, m_wording) + QStringLiteral(" left"));
    if (stock.splits)
        from += QString(QStringLiteral(", about ") + QString::number(std::lround(*stock.splits)) +
                        QStringLiteral(" splits"));
    lines << from;
    if (!pace)
        return lines;
    const auto end = expectedEnd(m_books, m_cook, m_now);
    const double error = std::hypot(kCountedStockError, splitWeight(m_books, lot).error);
    m_left = woodLeft(stock.netHeat, error, *pace, m_now,
                      end ? std::optional(end->time) : std::nullopt, end && end->assumed);
    if (hours(m_left->lasts) > 48) {
        lines << QStringLiteral("It lasts more than two days at this pace");
        return lines;
    }
    QString lasts =
        QString(QStringLiteral("It lasts until about ") + clock(m_left->runsOut(m_now)) +
                QStringLiteral(" (between ") + clock(m_now + m_left->least) +
                QStringLiteral(" and ") + clock(m_now + m_left->most) + QLatin1Char(')'));
    if (m_left->end)
        lasts += QString(QStringLiteral("; enough to the end with ") +
                         QString::number(std::lround(100 * m_left->chanceEnough)) +
                         QStringLiteral(" % chance"));
    lines << lasts;
    return lines;
}

QStringList Writer::temperatures() const
{
    QVector<CookTemperature> readings;
    for (const CookTemperature &t : m_books.temperatures)
        if (t.cook == m_cook.id && t.time <= m_now)
            readings << t;
    std::stable_sort(
        readings.begin(), readings.end(),
        [](const CookTemperature &a, const CookTemperature &b) { return a.time < b.time; });
    QStringList lines;
    if (m_cook.target)
        lines << QString(QStringLiteral("Target ") + temperature(*m_cook.target));
    QStringList last;
    const qsizetype from = std::max<qsizetype>(0, readings.size() - kMostTemperatures);
    for (const CookTemperature &t : readings.mid(from))
        last << QString(clock(t.time) + QLatin1Char(' ') +
                        (t.probe.isEmpty() ? QString() : QString(t.probe + QLatin1Char(' '))) +
                        temperature(t.temperature));
    if (!last.isEmpty())
        lines << last.join(QStringLiteral(", "));
    return lines;
}

QStringList Writer::notes() const
{
    QVector<CookNote> notes;
    Instant from = m_now - kNotesBack;
    for (const CookNote &note : m_books.notes) {
        if (note.cook != m_cook.id || note.time > m_now)
            continue;
        notes << note;
        if (note.kind == NoteKind::HandOver)
            from = std::max(from, note.time);
    }
    std::stable_sort(notes.begin(), notes.end(),
                     [](const CookNote &a, const CookNote &b) { return a.time < b.time; });
    const TableSpec &spec = specOf(TableId::CookNote);
    const FieldSpec &kinds = spec.fields.at(spec.indexOf(QStringLiteral("kind")));
    QStringList lines;
    for (const CookNote &note : std::as_const(notes)) {
        if (note.time <= from || note.kind == NoteKind::HandOver)
            continue;
        const QString kind = kinds.choices.at(static_cast<int>(note.kind)).label;
        const bool bare = note.kind == NoteKind::Remark && !note.text.isEmpty();
        QString text = bare ? note.text : kind;
        if (!bare && !note.text.isEmpty())
            text += QString(QStringLiteral(": ") + note.text);
        lines << QString(clock(note.time) + QLatin1Char(' ') + text);
    }
    return lines.mid(std::max<qsizetype>(0, lines.size() - kMostNotes));
}

QStringList Writer::worries() const
{
    QStringList lines;
    if (m_left && m_left->end && m_left->chanceEnough < kSureEnough)
        lines << QString(QStringLiteral("The wood may run out: to the end it takes ") +
                         heatWords(m_left->need, m_wording));
    if (m_lot != 0) {
        const LotStock stock = lotStockAt(m_books, m_lot, m_now);
        if (stock.readiness == Readiness::Wet)
            lines << QStringLiteral("The lot that is fed is too wet to burn clean");
        if (stock.readiness == Readiness::NoReading)
            lines << QStringLiteral("The lot that is fed has not been read");
    }
    for (const PitFuel &pit : m_fuel.pits)
        if (pit.pit == m_cook.pit && pit.named())
            lines << QStringLiteral("This pit has burned more than it should of late: look at "
                                    "gasket, door and damper");
    for (const CookFuel &fuel : m_fuel.cooks)
        if (fuel.cook == m_cook.id && fuel.upper && fuel.netHeat > *fuel.upper)
            lines << QString(QStringLiteral("It has taken more than nine cooks of ten by now: ") +
                             heatWords(fuel.netHeat, m_wording));
    for (const TaskDue &due : m_upkeep.tasks)
        if (due.overdue && (due.pit == m_cook.pit || due.pit == 0))
            lines << QString(QStringLiteral("Overdue: ") + m_books.tasks.value(due.task).name);
    for (const Override &record : litDespite(m_books, m_cook))
        lines << despiteWords(m_books, record);
    const bool grease =
        std::any_of(m_books.notes.cbegin(), m_books.notes.cend(), [this](const CookNote &note) {
            return note.cook == m_cook.id && note.kind == NoteKind::Grease;
        });
    if (!grease && m_now - m_cook.lit > durationFromHours(6))
        lines << QStringLiteral("Nobody has noted a look at the grease drain on this cook");
    return lines;
}

} // namespace

HandOver handOver(const Books &books, const FuelAnswer &fuel, const UpkeepAnswer &upkeep,
                  const Cook &cook, RecordId lot, Instant now, const Wording &wording)
{
    return Writer(books, fuel, upkeep, cook, lot, now, wording).write();
}

} // namespace rickyard::domain
