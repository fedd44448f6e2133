// When a lot will be dry: the answer in words, the drying curve, the chance for each coming event,
// and what the forecast takes for granted.
#pragma once

#include "views/page.h"

namespace rickyard::views {

class DryingChart;
class TextLabel;

class DryingPanel : public QWidget
{
    Q_OBJECT

public:
    explicit DryingPanel(PageContext &context, QWidget *parent = nullptr);
    void setLot(domain::RecordId lot);
    [[nodiscard]] QString answerText() const;
    [[nodiscard]] DryingChart &chart() { return *m_chart; }

private:
    void refresh();

    PageContext &m_context;
    domain::RecordId m_lot = 0;
    TextLabel *m_answer;
    TextLabel *m_chances;
    TextLabel *m_basis;
    DryingChart *m_chart;
};

} // namespace rickyard::views
