// A date and time of day in a fixed style, read from bytes: for logs with a reading every second,
// where a general reader of dates costs more than all the rest.
#pragma once

#include <QString>

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace rickyard::exchange {

struct ClockReading {
    std::optional<qint64> day;        // since 1970-01-01; missing when the style holds no date
    qint64 secondOfDay = 0;           // 86400 is the midnight that ends the day
    std::optional<int> offsetSeconds; // that the text says itself: Z, +02:00
};

// Styles are written with yyyy, yy, M, d, H (or h with AP), m, s, AP and any other characters as
// they stand; a number takes as many digits as there are. An empty style is ISO 8601. Fractions of
// a second are cut.
class TimePattern
{
public:
    explicit TimePattern(const QString &style = {});
    [[nodiscard]] bool isValid() const { return m_valid; }
    [[nodiscard]] bool holdsDate() const { return m_date; }
    [[nodiscard]] std::optional<ClockReading> read(std::string_view text) const;

private:
    enum class Part { Year, ShortYear, Month, Day, Hour, Minute, Second, HalfDay, Letter };
    struct Piece {
        Part part;
        char letter;
    };
    void parse(const QByteArray &style);
    [[nodiscard]] std::optional<ClockReading> readIso(std::string_view text) const;

    std::vector<Piece> m_pieces;
    bool m_iso = false;
    bool m_date = false;
    bool m_halfDay = false;
    bool m_valid = false;
};

// Days since 1970-01-01 in the Gregorian calendar; nothing for a day that is none.
std::optional<qint64> dayOfCalendar(int year, int month, int day);

// "90", "1.5", "12:30" (h:mm), "1:02:03" or "1.02:03:04" (days first): seconds, after `scale` for
// bare numbers. Nothing when it is none of them.
std::optional<double> readElapsed(std::string_view text, char decimal, double scale);
// "12", "-1.5" with the given decimal sign, blanks around it allowed.
std::optional<double> readPlainNumber(std::string_view text, char decimal);
std::string_view trimmedView(std::string_view text);

} // namespace rickyard::exchange
