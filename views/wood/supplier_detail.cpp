#include "views/wood/supplier_detail.h"

#include "models/domain/answers/answers.h"
#include "models/domain/wood/supplier_record.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QVBoxLayout>

namespace rickyard::views {

using domain::TableId;

SupplierDetail::SupplierDetail(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_words(new TextLabel(QString()))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(1));
    column->addWidget(new TextLabel(tr("Their record"), TextStyle::Heading));
    m_words->setWordWrap(true);
    column->addWidget(m_words);
    connect(&m_context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                for (TableId table : {TableId::Supplier, TableId::Lot, TableId::MoistureReading,
                                      TableId::OvenTest, TableId::WoodOrder, TableId::Yard})
                    if (changes.touches(table)) {
                        refresh();
                        return;
                    }
            });
    hide();
}

void SupplierDetail::setSupplier(domain::RecordId supplier)
{
    m_supplier = supplier;
    refresh();
}

QString SupplierDetail::text() const
{
    return m_words->text();
}

void SupplierDetail::refresh()
{
    const bool known = m_context.books().suppliers.contains(m_supplier);
    setVisible(known);
    if (!known)
        return;
    const domain::Wording wording = domain::wordingOf(m_context.books());
    m_words->setText(domain::supplierRecordWords(
        domain::supplierRecord(m_context.books(), m_supplier, wording), wording));
}

} // namespace rickyard::views
