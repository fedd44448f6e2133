// The wood of a cook by every way it was measured, what they say together, and one press that
// brings the ledger to it. Hidden while only the tally is known: then there is nothing to
// reconcile.
#pragma once

#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class TextLabel;

class WoodMeasurePanel : public QWidget
{
    Q_OBJECT

public:
    explicit WoodMeasurePanel(PageContext &context, QWidget *parent = nullptr);
    void setCook(domain::RecordId cook);
    [[nodiscard]] QString words() const;

private:
    void refresh();
    void trueUp();

    PageContext &m_context;
    domain::RecordId m_cook = 0;
    TextLabel *m_answer;
    TextLabel *m_ways;
    QPushButton *m_trueUp;
};

} // namespace rickyard::views
