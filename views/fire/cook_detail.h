// What one finished cook took: length, wood, what its pit should have taken, and its timeline.
#pragma once

#include "views/page.h"

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class CookChangesPanel;
class CookProbes;
class CookWoodPanel;
class Numeral;
class SectionTabs;
class StatusPill;
class TextLabel;
class WoodMeasurePanel;

class CookDetail : public QWidget
{
    Q_OBJECT

public:
    explicit CookDetail(PageContext &context, QWidget *parent = nullptr);
    void setCook(domain::RecordId cook);
    // Two cooks that are chosen together, to be compared; 0: this one alone.
    void setPair(domain::RecordId first, domain::RecordId second);
    [[nodiscard]] CookProbes &probes() { return *m_probes; }
    [[nodiscard]] SectionTabs &parts() { return *m_parts; }
    [[nodiscard]] CookWoodPanel &wood() { return *m_woodPanel; }
    [[nodiscard]] CookChangesPanel &changes() { return *m_changes; }

Q_SIGNALS:
    // Second 0: with the one most like it.
    void compareAsked(qint64 first, qint64 second);

private:
    void addCompare(QVBoxLayout *column);
    void addParts(QVBoxLayout *column);
    void refresh();
    void showFuel(const domain::Cook &cook);

    PageContext &m_context;
    domain::RecordId m_cook = 0;
    Numeral *m_length = nullptr;
    Numeral *m_wood = nullptr;
    Numeral *m_excess = nullptr;
    StatusPill *m_pill = nullptr;
    TextLabel *m_words = nullptr;
    CookProbes *m_probes = nullptr;
    domain::RecordId m_pairFirst = 0;
    domain::RecordId m_pairSecond = 0;
    QPushButton *m_compare = nullptr;
    SectionTabs *m_parts = nullptr;
    CookWoodPanel *m_woodPanel = nullptr;
    WoodMeasurePanel *m_measures = nullptr;
    CookChangesPanel *m_changes = nullptr;
};

// A cook's fuel against what was expected as a sentence, and what is missing or assumed.
QString fuelWords(const domain::Books &books, const domain::CookFuel &fuel);

} // namespace rickyard::views
