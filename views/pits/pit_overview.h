// Which pit burns too much: the answer in a sentence, a card a pit, the chart and the table behind
// it.
#pragma once

#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class Card;
class CusumChart;
class DiagnosisPanel;
class FuelChart;
class FuelTable;
class Numeral;
class PitCard;
class ReasonList;
class RepairList;
class SentenceLabel;
class StatusPill;
class FireWhatIf;

class PitOverview : public QWidget
{
    Q_OBJECT

public:
    explicit PitOverview(PageContext &context, QWidget *parent = nullptr);
    [[nodiscard]] FuelChart &chart() { return *m_chart; }
    [[nodiscard]] FuelTable &table() { return *m_table; }
    [[nodiscard]] FireWhatIf &whatIf() { return *m_whatIf; }
    [[nodiscard]] CusumChart &sums() { return *m_sums; }
    [[nodiscard]] DiagnosisPanel &diagnosis() { return *m_diagnosis; }
    [[nodiscard]] RepairList &repairs() { return *m_repairs; }
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] const QVector<PitCard *> &cards() const { return m_cards; }

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void build();
    QWidget *buildAnswer();
    void refresh();
    void refreshAnswer();
    void refreshCards();
    void arrangeCards();
    // Everything that is about the pit chosen in the chart.
    void showChosen();

    PageContext &m_context;
    Numeral *m_figure = nullptr;
    StatusPill *m_pill = nullptr;
    SentenceLabel *m_sentence = nullptr;
    QPushButton *m_why = nullptr;
    ReasonList *m_reasons = nullptr;
    QWidget *m_cardHolder = nullptr;
    QVector<PitCard *> m_cards;
    int m_columns = 0;
    FireWhatIf *m_whatIf = nullptr;
    FuelChart *m_chart = nullptr;
    CusumChart *m_sums = nullptr;
    DiagnosisPanel *m_diagnosis = nullptr;
    RepairList *m_repairs = nullptr;
    FuelTable *m_table = nullptr;
};

} // namespace rickyard::views
