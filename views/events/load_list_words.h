// The load list in words, for the screen and for paper alike.
#pragma once

#include "models/domain/plan/load_list_sheet.h"
#include "models/domain/upkeep/local_time.h"
#include "views/reports/paper.h"
#include "views/theme/theme.h"

namespace rickyard::views {

// One thing to load, to be ticked off.
struct LoadRow {
    QString key;    // of this thing and this amount: another amount is another row
    QString what;   // "Lighting: Oak, spring"
    QString place;  // the rick, where it is known
    QString splits; // "6 splits"; empty when not known
    QString weight; // "31 lb"
    QString boxes;  // "1 box"; empty without the mass of a box
    // All of it in one line.
    [[nodiscard]] QString line() const;
};
struct LoadGroup {
    QString heading; // "Long Tom: light Sat 5 Dec, 03:00, 12 h"
    QVector<LoadRow> rows;
};

class LoadWords
{
public:
    LoadWords(const domain::Books &books, const domain::LoadSheet &sheet);

    [[nodiscard]] QString title() const;    // "Load list: Mill Field Supper"
    [[nodiscard]] QString subtitle() const; // place and serving
    [[nodiscard]] QString amount() const;   // "41 splits (214 lb), in 6 boxes"
    [[nodiscard]] QVector<LoadGroup> groups() const;
    // Empty when there is wood enough.
    [[nodiscard]] QString shortage() const;
    [[nodiscard]] QString bar(const domain::LoadBar &bar) const;
    [[nodiscard]] Role barRole(const domain::LoadBar &bar) const;
    // What was left out or assumed, a line each.
    [[nodiscard]] QStringList notes() const;
    // The trailer, a line each; empty when nothing is towed.
    [[nodiscard]] QStringList trailer() const;
    [[nodiscard]] QString trailerVerdict() const; // against the limit; empty when not known
    static QString towingCaution();
    static QString chanceWords(double chance); // "19 such cooks of 20 (95 %)"

    [[nodiscard]] Paper paper() const;

private:
    [[nodiscard]] QString mass(domain::Mass mass) const;
    [[nodiscard]] QString when(domain::Instant time) const; // "Sat 5 Dec, 6 PM"
    [[nodiscard]] LoadGroup fireGroup(const domain::LoadFire &fire) const;
    [[nodiscard]] LoadGroup otherGroup() const;
    [[nodiscard]] QString boxText(std::optional<int> boxes) const;

    const domain::Books &m_books;
    const domain::LoadSheet &m_sheet;
    domain::LocalTime m_local;
};

} // namespace rickyard::views
