#include "views/pits/cusum_chart.h"

#include "models/domain/fire/fuel_replay.h"
#include "views/fire/fire_words.h"
#include "views/pits/pit_card.h"
#include "views/theme/theme_hub.h"

#include <QtCharts/QDateTimeAxis>
#include <QtCharts/QValueAxis>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

double millis(Instant t)
{
    return static_cast<double>(t.seconds()) * 1000.0;
}

} // namespace

CusumChart::CusumChart(QWidget *parent)
    : ChartView(tr("Sum of the scores of one pit, cook by cook"), parent)
{
    setMinimumHeight(theme(this).px(260));
    setDescribe([this](const QAbstractSeries *, const QPointF &point) {
        const Mark *mark = markAt(point.x());
        return mark != nullptr ? mark->words : QString();
    });
}

const CusumChart::Mark *CusumChart::markAt(double at) const
{
    const auto nearest =
        std::min_element(m_marks.begin(), m_marks.end(), [at](const Mark &a, const Mark &b) {
            return std::abs(a.at - at) < std::abs(b.at - at);
        });
    return nearest == m_marks.end() ? nullptr : &*nearest;
}

void CusumChart::showPit(const Books &books, const FuelAnswer &fuel, RecordId pit, Instant now)
{
    m_books = &books;
    clearAll();
    m_marks.clear();
    double highest = 0;
    Instant first = now;
    Instant last = Instant::ofSeconds(0);
    int cooks = 0;
    for (const CookFuel &cook : fuel.cooks) {
        if (cook.pit != pit || !cook.verdict)
            continue;
        highest = std::max({highest, cook.verdict->up, cook.verdict->down, cook.verdict->limit});
        first = std::min(first, cook.lit);
        last = std::max(last, cook.lit);
        ++cooks;
    }
    if (cooks == 0) {
        setSummary(tr("No cook of this pit is judged yet."));
        return;
    }
    const double margin = std::max(0.03 * (millis(last) - millis(first)), 86400e3);
    auto *days = new QDateTimeAxis;
    days->setFormat(QStringLiteral("d MMM yy"));
    days->setTickCount(6);
    days->setRange(QDateTime::fromMSecsSinceEpoch(std::llround(millis(first) - margin)),
                   QDateTime::fromMSecsSinceEpoch(std::llround(millis(last) + margin)));
    addAxis(days, Qt::AlignBottom);
    auto *sums = new QValueAxis;
    const double top = std::max(4.0, std::ceil(highest * 1.1));
    sums->setRange(0, top);
    sums->setTickType(QValueAxis::TicksDynamic);
    sums->setTickInterval(top > 12 ? 5 : 2);
    sums->setLabelFormat(QStringLiteral("%.0f"));
    addAxis(sums, Qt::AlignLeft, tr("Sum of scores"));
    drawLines(fuel, pit, top);
    drawTurns(pit, now, top);
    const auto standing = std::find_if(fuel.pits.begin(), fuel.pits.end(),
                                       [pit](const PitFuel &one) { return one.pit == pit; });
    if (standing != fuel.pits.end())
        setSummary(tr("After %1 cooks the sum stands at %2; the flag goes up above %3.")
                       .arg(cooks)
                       .arg(standing->up, 0, 'f', 1)
                       .arg(standing->limit, 0, 'f', 1));
}

void CusumChart::drawLines(const FuelAnswer &fuel, RecordId pit, double top)
{
    const FireWords words(*m_books);
    QList<QPointF> more;
    QList<QPointF> less;
    QList<QPointF> limit;
    QList<QPointF> raised;
    for (const CookFuel &cook : fuel.cooks) {
        if (cook.pit != pit || !cook.verdict)
            continue;
        const WatchVerdict &v = *cook.verdict;
        const double x = millis(cook.lit);
        more << QPointF(x, v.up);
        less << QPointF(x, v.down);
        limit << QPointF(x, std::min(top, v.limit));
        if (v.raised)
            raised << QPointF(x, v.flag == WatchFlag::More ? v.up : v.down);
        QString text =
            tr("%1, %2: %3 against what was expected\nsum %4, limit %5")
                .arg(cookTitle(*m_books, m_books->cooks.value(cook.cook)), words.day(cook.lit),
                     words.percent(*cook.excess), formatNumber(v.up, 1, words.locale()),
                     formatNumber(v.limit, 1, words.locale()));
        if (v.raised)
            text += v.flag == WatchFlag::More ? tr("\nraised the flag: burns more")
                                              : tr("\nraised the flag: burns less");
        m_marks.append({x, cook.cook, text});
    }
    const int index = pitIndex(*m_books, pit);
    const auto draw = [&](QXYSeries *series, const QString &name, const QList<QPointF> &points,
                          int hue, SeriesPart part) {
        series->setName(name);
        series->replace(points);
        add(series, hue, part);
        connect(series, &QXYSeries::clicked, this, [this](const QPointF &point) {
            if (const Mark *mark = markAt(point.x()); mark != nullptr && mark->cook != 0)
                Q_EMIT cookOpened(mark->cook);
        });
    };
    draw(new QLineSeries, tr("the flag goes up"), limit, -1, SeriesPart::Limit);
    draw(new QLineSeries, tr("burns less"), less, -1, SeriesPart::Expected);
    draw(new QLineSeries, tr("burns more"), more, index, SeriesPart::Measured);
    if (!raised.isEmpty())
        draw(new QScatterSeries, tr("flag raised"), raised, index, SeriesPart::Measured);
}

void CusumChart::drawTurns(RecordId pit, Instant now, double top)
{
    const FireWords words(*m_books);
    QList<QPointF> mended;
    QList<QPointF> sound;
    for (const PitTurn &turn : pitTurns(*m_books, now)) {
        if (turn.pit != pit)
            continue;
        const QPointF at(millis(turn.at), 0.04 * top);
        (turn.kind == PitTurnKind::Mended ? mended : sound) << at;
        m_marks.append({at.x(), 0,
                        QString((turn.kind == PitTurnKind::Mended ? tr("Mended %1: ")
                                                                  : tr("Looked %1, found sound: "))
                                    .arg(words.day(turn.at)) +
                                m_books->findings.value(turn.finding).text)});
    }
    const auto draw = [&](const QString &name, const QList<QPointF> &points, int hue) {
        if (points.isEmpty())
            return;
        auto *series = new QScatterSeries;
        series->setName(name);
        series->replace(points);
        add(series, hue, SeriesPart::Measured);
    };
    draw(tr("mended"), mended, 4);
    draw(tr("looked, nothing found"), sound, 5);
}

} // namespace rickyard::views
