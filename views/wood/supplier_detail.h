// How a supplier kept to their word, above the form of the supplier.
#pragma once

#include "views/page.h"

namespace rickyard::views {

class TextLabel;

class SupplierDetail : public QWidget
{
    Q_OBJECT

public:
    explicit SupplierDetail(PageContext &context, QWidget *parent = nullptr);

    void setSupplier(domain::RecordId supplier); // 0: nothing to show
    [[nodiscard]] QString text() const;

private:
    void refresh();

    PageContext &m_context;
    domain::RecordId m_supplier = 0;
    TextLabel *m_words;
};

} // namespace rickyard::views
