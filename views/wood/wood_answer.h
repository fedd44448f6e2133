// The head of the Wood page: what is ready to burn, what still waits, by which day to order, and
// the course of the dry stock.
#pragma once

#include "models/domain/answers/answers.h"
#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class FanChart;
class Numeral;
class SentenceLabel;
class TextLabel;

class WoodAnswerPanel : public QWidget
{
    Q_OBJECT

public:
    explicit WoodAnswerPanel(PageContext &context, QWidget *parent = nullptr);

    // The stock is counted at once; the order waits for the answers.
    void refresh(const domain::Stock &stock);
    [[nodiscard]] QString readyText() const { return m_readyText; }

private:
    void showReady(const domain::Stock &stock);
    void showOrder();

    PageContext &m_context;
    QString m_readyText;
    Numeral *m_ready;
    Numeral *m_waiting;
    Numeral *m_order;
    SentenceLabel *m_sentence;
    TextLabel *m_why;
    FanChart *m_chart;
};

} // namespace rickyard::views
