// Values of the domain as JSON members whose keys name the unit: SI and US side by side.
#pragma once

#include "models/domain/records/books.h"

#include <QJsonObject>
#include <QJsonValue>

#include <optional>

namespace rickyard::exchange
{

// Collects members; a missing value becomes null, so that every row has the same keys.
class JsonFields
{
public:
    void set(const char *key, const QJsonValue &value);
    void number(const char *key, std::optional<double> value);
    void mass(const char *key, std::optional<domain::Mass> value);     // _kg, _lb
    void volume(const char *key, std::optional<domain::Volume> value); // _m3, _ft3, _cord
    void heat(const char *key, std::optional<domain::Heat> value);     // _MJ, _seasoned_lb
    void temperature(const char *key, std::optional<domain::Temperature> value); // _degC, _degF
    void moisture(const char *key, std::optional<domain::Moisture> value);       // _pct_dry
    void speed(const char *key, std::optional<domain::Speed> value);             // _m_s, _mph
    void time(const char *key, std::optional<domain::Instant> value);            // ISO 8601 UTC
    void day(const char *key, const QDate &value);                               // ISO 8601
    // The record's id under KEY and its title under KEY_name; null for id 0.
    void record(const char *key, const domain::Books &books, domain::TableId table,
                domain::RecordId id);

    [[nodiscard]] const QJsonObject &object() const { return m_object; }

private:
    void unit(const char *key, const char *suffix, std::optional<double> value);

    QJsonObject m_object;
};

} // namespace rickyard::exchange
