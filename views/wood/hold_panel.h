// Puts a lot on hold with a reason, or lifts the hold. The program never says that wood is safe:
// lifting a hold is the crew's word, and the reason is theirs.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

class QLineEdit;
class QPushButton;

namespace rickyard::views {

class FieldRow;
class TextLabel;

class HoldPanel : public QWidget
{
    Q_OBJECT

public:
    explicit HoldPanel(PageContext &context, QWidget *parent = nullptr);
    void start(domain::RecordId lot);

Q_SIGNALS:
    void saved();
    void closed();

private:
    void save();

    PageContext &m_context;
    domain::RecordId m_lot = 0;
    TextLabel *m_heading = nullptr;
    QLineEdit *m_reason = nullptr;
    FieldRow *m_row = nullptr;
    QWidget *m_usual = nullptr;
    QPushButton *m_mould = nullptr; // one press: hold it now
    QPushButton *m_save = nullptr;
};

} // namespace rickyard::views
