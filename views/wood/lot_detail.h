// What a lot holds now: amount in every unit the crew uses, moisture on both bases, whether it may
// be burned, and whether the delivery was what was paid for. The three acts on a lot open in its
// place: log a reading, count, hold.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/wood/stock.h"
#include "views/page.h"

class QPushButton;
class QStackedWidget;

namespace rickyard::views {

class CautionNote;
class CountPanel;
class DryingPanel;
class HoldPanel;
class Numeral;
class ReadingEntry;
class StatusPill;
class TextLabel;

class LotDetail : public QWidget
{
    Q_OBJECT

public:
    explicit LotDetail(PageContext &context, QWidget *parent = nullptr);

    void setLot(domain::RecordId lot); // 0: nothing to show
    [[nodiscard]] domain::RecordId lot() const { return m_lot; }
    enum class Panel { Facts, Reading, Count, Hold };
    void openPanel(Panel panel);
    [[nodiscard]] Panel panel() const;
    [[nodiscard]] ReadingEntry &reading() { return *m_reading; }
    [[nodiscard]] CountPanel &count() { return *m_count; }
    [[nodiscard]] HoldPanel &hold() { return *m_hold; }
    [[nodiscard]] DryingPanel &drying() { return *m_drying; }
    [[nodiscard]] QString deliveryText() const;

Q_SIGNALS:
    void panelChanged(bool acting); // true while one of the acts is open

private:
    QWidget *buildFacts();
    QWidget *buildActs();
    void refresh();
    void showAmounts(const domain::LotStock &stock);
    void showValue(const domain::Lot &lot, const domain::LotStock &stock);
    void showBurn();
    void showMoisture(const domain::LotStock &stock);
    void showDelivery(const domain::Lot &lot);
    void showCaution(const domain::Lot &lot, const domain::LotStock &stock);

    PageContext &m_context;
    domain::RecordId m_lot = 0;
    QStackedWidget *m_stack = nullptr;
    TextLabel *m_name = nullptr;
    StatusPill *m_pill = nullptr;
    Numeral *m_heat = nullptr;
    Numeral *m_stacked = nullptr;
    Numeral *m_splits = nullptr;
    TextLabel *m_amounts = nullptr;
    TextLabel *m_moisture = nullptr;
    TextLabel *m_value = nullptr;
    TextLabel *m_burn = nullptr;
    StatusPill *m_deliveryPill = nullptr;
    TextLabel *m_delivery = nullptr;
    TextLabel *m_findings = nullptr;
    CautionNote *m_caution = nullptr;
    QPushButton *m_holdButton = nullptr;
    QVector<QPushButton *> m_acts;
    ReadingEntry *m_reading = nullptr;
    CountPanel *m_count = nullptr;
    DryingPanel *m_drying = nullptr;
    HoldPanel *m_hold = nullptr;
};

} // namespace rickyard::views
