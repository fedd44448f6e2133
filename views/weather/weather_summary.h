// What weather a yard has: from when to when, how much of it is covered, how old the last record
// is.
#pragma once

#include "models/domain/records/books.h"

#include <QStringList>

#include <optional>

namespace rickyard::views {

struct WeatherSummary {
    QStringList places; // of all records, by name
    qint64 observations = 0;
    qint64 normals = 0;
    std::optional<domain::Instant> first; // of the observations
    std::optional<domain::Instant> last;
    // Share of the time from first to last with a record no more than 90 minutes away, which is
    // the reach of a record in every computation (models/domain/weather/series.h).
    double covered = 0;
};

// `place` limits it to one place; null: all of them.
WeatherSummary summarise(const domain::Books &books, const QString &place = {});
// "3 hours", "12 days".
QString ageWords(domain::Duration age);

} // namespace rickyard::views
