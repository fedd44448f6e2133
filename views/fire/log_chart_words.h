// What the charts of the log say in words: the sentence above, what the line is, and one cook.
#pragma once

#include "models/domain/fire/use_line.h"
#include "views/fire/fire_words.h"
#include "views/widgets/sentence_label.h"

namespace rickyard::views {

class LogChartWords
{
public:
    // The books must outlive it.
    LogChartWords(const domain::Books &books, domain::UseAgainst against);

    // Units shown: of the axis below, of the one at the left.
    [[nodiscard]] double across(double base) const; // of UsePoint::across
    [[nodiscard]] double use(double joules) const;
    [[nodiscard]] QString acrossTitle() const;
    [[nodiscard]] QString useTitle() const;

    // "Each further hour takes 11 seasoned lb on Barge, 9 on Deacon." Pits with most cooks first.
    [[nodiscard]] QVector<SentencePart> sentence(const QVector<domain::UseLine> &lines) const;
    // What the lines are, how sure each slope is, and how many cooks have no point.
    [[nodiscard]] QString basis(const QVector<domain::UseLine> &lines, int leftOut) const;
    [[nodiscard]] QString cook(const domain::CookFuel &fuel) const;
    // A figure of use: "388 seasoned lb", "32.3 seasoned lb an hour".
    [[nodiscard]] QString useText(double joules) const;

private:
    [[nodiscard]] QString pitName(domain::RecordId pit) const;
    // Of one step of the sentence (an hour, ten degrees, ten of wind), in the unit shown.
    [[nodiscard]] double perStep(double slope) const;
    [[nodiscard]] QString amount(double value) const;

    const domain::Books &m_books;
    FireWords m_words;
    domain::UseAgainst m_against;
};

} // namespace rickyard::views
