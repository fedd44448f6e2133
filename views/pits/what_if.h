// What a cook would take: sliders for the fire, the answer in the largest type, redrawn as they
// move. Nothing is recorded.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/quantities/units.h"
#include "views/page.h"

#include <array>

class QComboBox;
class QGridLayout;
class QSlider;

namespace rickyard::views {

class Numeral;
class ShareBar;
class TextLabel;

class FireWhatIf : public QWidget
{
    Q_OBJECT

public:
    enum Lever { Hours, PitHeat, Outside, Wind, Moisture, Food, LeverCount };

    explicit FireWhatIf(QWidget *parent = nullptr);
    // The books must outlive it. `first` is the pit it opens with; later it keeps what was set.
    void showFuel(const domain::Books &books, const domain::FuelAnswer &fuel,
                  domain::RecordId first);
    void choosePit(domain::RecordId pit);

    [[nodiscard]] QSlider *slider(Lever lever) const { return m_levers[lever].slider; }
    [[nodiscard]] QComboBox *choice() const { return m_pits; }
    // The whole answer as one sentence.
    [[nodiscard]] QString sentence() const { return m_sentence; }

private:
    struct LeverRow {
        QSlider *slider = nullptr;
        TextLabel *value = nullptr;
        domain::Dimension dimension = domain::Dimension::Plain;
    };
    void addLever(QGridLayout *grid, Lever lever, const QString &name, domain::Dimension dimension);
    void setRanges();
    void startFrom(domain::RecordId pit);
    [[nodiscard]] qint64 base(Lever lever) const; // in the dimension's base unit
    void setBase(Lever lever, qint64 base);
    [[nodiscard]] const domain::Unit &unitOf(Lever lever) const;
    [[nodiscard]] domain::PlannedFire fire() const;
    void answer();

    const domain::Books *m_books = nullptr;
    domain::FuelAnswer m_fuel;
    QComboBox *m_pits;
    std::array<LeverRow, LeverCount> m_levers;
    Numeral *m_amount;
    TextLabel *m_likely;
    TextLabel *m_words;
    ShareBar *m_parts;
    domain::RecordId m_pit = 0;
    bool m_metric = false;
    QString m_sentence;
};

} // namespace rickyard::views
