// What the charts of the log draw, as a table: sorted by any column, Enter opens a cook.
#pragma once

#include "models/domain/fire/use_line.h"
#include "views/page.h"
#include "views/records/figure_table.h"

namespace rickyard::views {

class LogTable : public QWidget
{
    Q_OBJECT

public:
    explicit LogTable(PageContext &context, QWidget *parent = nullptr);
    void showCooks(const QVector<domain::CookFuel> &cooks, domain::UseAgainst against,
                   const QVector<domain::UseLine> &lines);
    [[nodiscard]] FigureTable &view() { return *m_view; }

Q_SIGNALS:
    void cookOpened(qint64 cook);

private:
    PageContext &m_context;
    FigureTable *m_view;
};

} // namespace rickyard::views
