// A pit temperature read off and typed: number and Enter.
#pragma once

#include "views/page.h"

class QComboBox;

namespace rickyard::views {

class FieldRow;
class UnitLineEdit;

class TemperatureEntry : public QWidget
{
    Q_OBJECT

public:
    TemperatureEntry(PageContext &context, domain::RecordId cook, QWidget *parent = nullptr);
    void focusEntry();

Q_SIGNALS:
    void done(const QString &text, const rickyard::domain::Link &link);

private:
    void enter();

    PageContext &m_context;
    domain::RecordId m_cook;
    UnitLineEdit *m_number = nullptr;
    QComboBox *m_probe = nullptr;
    FieldRow *m_row = nullptr;
};

} // namespace rickyard::views
