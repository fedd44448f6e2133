// The wish: 500 lots with six years of daily weather forecast again in under a second.
#include "models/domain/wood/seasoning.h"

#include <QElapsedTimer>

#include <cmath>
#include <cstdio>
#include <random>

using namespace rickyard::domain;

namespace {

constexpr int kLots = 500;
constexpr int kYears = 6;
constexpr qint64 kFirst = 18000;

// Six years of invented days: a season and its weather.
Books yard()
{
    std::mt19937_64 random(1);
    std::normal_distribution<double> normal(0, 1);
    Books books;
    books.yards.insert(1, Yard());
    Species oak;
    oak.id = 1;
    oak.name = QStringLiteral("Post oak");
    oak.basicGravity = Plain::ofBase(600000);
    books.species.insert(1, oak);
    RecordId id = 0;
    for (qint64 day = kFirst; day < kFirst + kYears * 365; ++day)
        for (int hour = 0; hour < 24; hour += 3) {
            Weather w;
            w.id = ++id;
            w.time = Instant::ofSeconds(day * 86400 + hour * 3600);
            const double season = std::cos(2 * M_PI * static_cast<double>(day % 365) / 365.0);
            w.temperature = temperatureFromCelsius(15 - 12 * season + 3 * normal(random));
            w.humidity = Ratio::rounded(1e6 * std::clamp(0.65 + 0.1 * normal(random), 0.1, 1.0));
            w.rain = Length::rounded(std::max(0.0, 200 * normal(random)));
            books.weather.insert(w.id, w);
        }
    for (RecordId lot = 1; lot <= kLots; ++lot) {
        Lot l;
        l.id = lot;
        l.species = 1;
        l.received = Instant::ofSeconds((kFirst + lot % 300) * 86400);
        l.cover = lot % 2 == 0 ? Cover::Open : Cover::TopCover;
        books.lots.insert(lot, l);
        Movement m;
        m.id = lot;
        m.lot = lot;
        m.time = l.received;
        m.dryMass = massFromPounds(1000);
        books.movements.insert(lot, m);
        for (int n = 0; n < 6; ++n) {
            MoistureReading r;
            r.id = lot * 10 + n;
            r.lot = lot;
            r.time = l.received + Duration::ofBase(n * 60 * 86400LL);
            for (int piece = 0; piece < 6; ++piece)
                r.pieces << Moisture::rounded(1000 *
                                              (14 + 45 * std::exp(-n / 3.0) + 2 * normal(random)));
            books.readings.insert(r.id, r);
        }
    }
    return books;
}

} // namespace

int main()
{
    const Books books = yard();
    const Instant now = Instant::ofSeconds((kFirst + kYears * 365) * 86400);
    for (int run = 0; run < 3; ++run) {
        QElapsedTimer timer;
        timer.start();
        const auto all = seasoningOf(books, now);
        std::printf("seasoning: %d lots over %d years of days: %.0f ms\n",
                    static_cast<int>(all.size()), kYears,
                    static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    return 0;
}
