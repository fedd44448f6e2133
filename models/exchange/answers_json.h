// The three answers for programs: JSON with SI and US units named in the keys, and the fuel table
// as CSV. Keys are sorted, times ISO 8601 UTC, missing values null: the same books and the same
// moment give the same bytes.
#pragma once

#include "models/domain/answers/answers.h"
#include "models/domain/records/books.h"

#include <QByteArray>
#include <QJsonObject>

namespace rickyard::exchange {

QJsonObject toJson(const domain::Answers &answers, const domain::Books &books);
QJsonObject toJson(const domain::WoodAnswer &answer, const domain::Books &books);
QJsonObject toJson(const domain::FuelAnswer &answer, const domain::Books &books);
QJsonObject toJson(const domain::UpkeepAnswer &answer, const domain::Books &books);
QJsonObject toJson(const QMap<domain::RecordId, domain::SeasoningForecast> &lots,
                   const domain::Books &books);
QJsonObject toJson(const domain::Headline &headline);

QString flagKey(domain::WatchFlag flag); // "more", "less" or nothing

// One line a cook, by lighting time: actual, expected from earlier cooks, 90 % interval, excess,
// score, both sums of the chart with their limit, flag, and why a cook was left out.
QByteArray fuelCsv(const domain::FuelAnswer &answer, const domain::Books &books);

} // namespace rickyard::exchange
