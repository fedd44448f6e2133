// Ahead: the three answers as three sentences, and the coming six weeks as a ribbon.
#pragma once

#include "views/page.h"

namespace rickyard::views {

class AnswerCard;
class EmptyState;
class LateOrders;
class PageHeader;
class Ribbon;
class Sparkline;
class WoodWhy;

class AheadPage : public Page
{
    Q_OBJECT

public:
    explicit AheadPage(PageContext &context, QWidget *parent = nullptr);
    bool show(domain::Link link) override;

    [[nodiscard]] WoodWhy &woodWhy() const { return *m_woodWhy; }
    [[nodiscard]] AnswerCard &woodCard() const { return *m_wood; }

private:
    void build();
    void refresh();
    void refreshWood();
    void refreshFuel();
    void refreshUpkeep();
    [[nodiscard]] QString subtitle() const;

    PageHeader *m_header = nullptr;
    EmptyState *m_welcome = nullptr;
    QWidget *m_answers = nullptr;
    AnswerCard *m_wood = nullptr;
    WoodWhy *m_woodWhy = nullptr;
    LateOrders *m_late = nullptr;
    AnswerCard *m_fuel = nullptr;
    AnswerCard *m_upkeep = nullptr;
    Sparkline *m_woodChart = nullptr;
    Sparkline *m_fuelChart = nullptr;
    Sparkline *m_upkeepChart = nullptr;
    Ribbon *m_ribbon = nullptr;
};

} // namespace rickyard::views
