// Which lot the wood comes from: ready lots first, each with its moisture in words.
#pragma once

#include "views/page.h"

#include <QComboBox>

namespace rickyard::views {

class LotPicker : public QComboBox
{
    Q_OBJECT

public:
    explicit LotPicker(PageContext &context, QWidget *parent = nullptr);
    // Asks the books again; keeps the choice where it is still there.
    void refill();
    // A lot that is not among the choices any more is left aside.
    void choose(domain::RecordId lot);
    [[nodiscard]] domain::RecordId lot() const { return currentData().toLongLong(); }

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    PageContext &m_context;
};

} // namespace rickyard::views
