// A moisture by two weighings of one piece: dried in the oven, or a marked piece of the rick whose
// oven-dry weight is known from before.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class FieldSet;
class TextLabel;

class WeighingEntry : public QWidget
{
    Q_OBJECT

public:
    explicit WeighingEntry(PageContext &context, QWidget *parent = nullptr);

    void start(domain::RecordId lot);
    [[nodiscard]] FieldSet &fields() const { return *m_fields; }
    [[nodiscard]] QString summary() const;

Q_SIGNALS:
    void saved(qint64 id);
    void closed();

protected:
    void keyPressEvent(QKeyEvent *event) override;

private:
    void build();
    void heed(const QString &key);
    void prefill();
    [[nodiscard]] domain::OvenTest test(domain::Problems *problems = nullptr) const;
    void showSummary();
    void save();

    PageContext &m_context;
    domain::RecordId m_lot = 0;
    FieldSet *m_fields;
    TextLabel *m_moisture = nullptr;
    QPushButton *m_save = nullptr;
    bool m_dryTyped = false; // by hand: never written over
};

} // namespace rickyard::views
