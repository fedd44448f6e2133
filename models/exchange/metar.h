// Aviation routine weather reports (METAR, SPECI): WMO FM 15, in the United States Federal
// Meteorological Handbook No. 1. Any number of reports in a text: one a line, folded over several,
// ended by "=" or not, with or without a date before each or on a line of its own.
//
// A report says day, hour and minute in UTC; year and month are those of the date before it, else
// of the moment given in the options, whichever lies nearest. Of two reports of one station and
// time a correction (COR) wins, else the later one in the file. Groups that say nothing about
// temperature, wind, rain or pressure are passed over, as are forecasts in a report's tail (TEMPO,
// BECMG) and whole forecasts (TAF).
#pragma once

#include "models/exchange/weather_gather.h"

namespace rickyard::exchange {

// One report as its groups say it; values in the units of the groups.
struct Metar {
    QString station; // four letters and digits
    int day = 0;
    int hour = 0;
    int minute = 0;
    bool special = false;           // SPECI
    bool automatic = false;         // AUTO
    bool corrected = false;         // COR, or CCA and so on
    bool nil = false;               // the station had nothing to say
    std::optional<double> wind;     // m/s; 0 is calm
    std::optional<double> gust;     // m/s
    std::optional<int> windFrom;    // degrees true; none when variable or calm
    std::optional<int> varyingFrom; // of a range such as 140V220
    std::optional<int> varyingTo;
    std::optional<double> temperature; // degrees Celsius, in tenths when the remarks give them
    std::optional<double> dewPoint;
    std::optional<double> pressure; // altimeter setting, hPa
    std::optional<double> rain;     // inches since the last routine report
    struct Fault {
        QString quantity;
        QString group;
        QString expected;
    };
    QVector<Fault> faults; // groups of a known kind that cannot be read
};

// The groups of one report, from the station on, or from METAR or SPECI. Nothing when the station
// or the time is not there.
std::optional<Metar> readMetar(const QString &report);

// The moment with that day of the month and time which lies nearest to `about`; nothing when no
// month around it has such a day.
std::optional<domain::Instant> nearestMoment(int day, int hour, int minute, domain::Instant about);

WeatherImport readMetars(const QByteArray &bytes, const WeatherReadOptions &options,
                         const QString &fileName = {}, const Progress &progress = {},
                         const std::atomic_bool *cancel = nullptr);
// Whether the first lines hold a report.
bool looksLikeMetar(const QByteArray &head);

} // namespace rickyard::exchange
