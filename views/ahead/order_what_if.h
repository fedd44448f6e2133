// What if the order were another: whose wood, how much, on which day, how late, how much colder,
// and which risk is accepted. Worked out on a thread on the answer's own draw while a slider moves;
// the newest setting is always worked out, one that was passed over is not.
#pragma once

#include "models/domain/plan/reorder.h"
#include "views/latest_work.h"

#include <QTimer>
#include <QWidget>

#include <array>
#include <memory>

class QComboBox;
class QGridLayout;
class QPushButton;
class QSlider;

namespace rickyard::views {

class SentenceLabel;
class StatusPill;
class TextLabel;

class OrderWhatIf : public QWidget
{
    Q_OBJECT

public:
    enum Lever { Amount, Day, Late, Colder, Risk, LeverCount };

    explicit OrderWhatIf(QWidget *parent = nullptr);

    // Starts at the first order proposed; later it keeps what was set.
    void show(const domain::WoodAnswer &answer, const domain::Wording &wording);
    void chooseSource(int source); // in the answer's sources; -1: nothing is ordered
    void setWritable(bool writable);

    [[nodiscard]] QSlider *slider(Lever lever) const { return m_levers[lever].slider; }
    [[nodiscard]] QComboBox *sources() const { return m_sources; }
    [[nodiscard]] domain::WoodWhatIf asked() const;
    [[nodiscard]] bool atProposal() const; // nothing was moved from the first order proposed
    [[nodiscard]] const domain::WoodWhatIfAnswer &result() const { return m_result; }
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] QString advice() const;
    [[nodiscard]] bool settled() const; // the sentence belongs to what the sliders say

Q_SIGNALS:
    void answered(); // see result()
    void writeAsked(int source, int units);

private:
    struct LeverRow {
        TextLabel *label = nullptr;
        QSlider *slider = nullptr;
        TextLabel *value = nullptr;
    };
    void build();
    void addLever(QGridLayout *grid, Lever lever, const QString &name);
    void fillSources();
    void reset();
    void moved();
    void showValues();
    void ask();
    void take(const domain::WoodWhatIfAnswer &result);
    void askAdvice();
    [[nodiscard]] QString leverText(Lever lever) const;
    [[nodiscard]] double colderKelvin() const;

    std::shared_ptr<const domain::WoodAnswer> m_answer;
    domain::Wording m_wording;
    domain::WoodWhatIfAnswer m_result;
    bool m_touched = false;
    bool m_again = false;
    LatestWork m_work;
    LatestWork m_adviceWork;
    QTimer m_adviceSoon;
    QComboBox *m_sources = nullptr;
    std::array<LeverRow, LeverCount> m_levers;
    StatusPill *m_pill = nullptr;
    SentenceLabel *m_sentence = nullptr;
    TextLabel *m_advice = nullptr;
    QPushButton *m_write = nullptr;
};

} // namespace rickyard::views
