// The wood of one cook, lot by lot, and what it cost by the price of each lot.
#pragma once

#include "models/domain/fire/cook_wood.h"
#include "views/page.h"

class QVBoxLayout;

namespace rickyard::views {

class CookWoodPanel : public QWidget
{
    Q_OBJECT

public:
    explicit CookWoodPanel(PageContext &context, QWidget *parent = nullptr);
    void setCook(domain::RecordId cook);

private:
    // A name with its money at the right, and the figures below.
    void addLine(const QString &name, const domain::CookWoodLine &line);
    [[nodiscard]] QString figuresOf(const domain::CookWoodLine &line) const;

    PageContext &m_context;
    QVBoxLayout *m_lines;
};

} // namespace rickyard::views
