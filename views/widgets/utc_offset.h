// An offset from UTC as people type it.
#pragma once

#include <QString>

#include <optional>

namespace rickyard::views {

// "+02:00", "-5", "-05:30" in seconds east of UTC; nothing when it is none.
std::optional<int> utcOffsetOf(const QString &text);
QString utcOffsetText(int seconds);

} // namespace rickyard::views
