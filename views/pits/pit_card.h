// One pit in the overview: how it stands against what was to be expected of it, in a word, a number
// and a small line, and what an hour on it takes in the weather of the day.
#pragma once

#include "models/domain/fire/fuel.h"
#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class Card;
class Numeral;
class Sparkline;
class StatusPill;
class TextLabel;

class PitCard : public QWidget
{
    Q_OBJECT

public:
    // `index`: the pit's place in the list of pits, its hue and marker on every chart.
    PitCard(const domain::Pit &pit, int index, QWidget *parent = nullptr);
    [[nodiscard]] domain::RecordId pit() const { return m_pit; }
    void showFuel(const domain::Books &books, const domain::FuelAnswer &fuel);

Q_SIGNALS:
    void opened(qint64 pit);
    void chosen(qint64 pit);

private:
    void showStanding(const domain::Books &books, const domain::PitFuel &pit);

    domain::RecordId m_pit;
    int m_index;
    Card *m_card;
    StatusPill *m_pill;
    Numeral *m_excess;
    Sparkline *m_line;
    TextLabel *m_words;
};

// A pit's place among all pits by id: its hue and marker.
int pitIndex(const domain::Books &books, domain::RecordId pit);

} // namespace rickyard::views
