// The values read over time of one task that asks for readings: a chart with its limits, and the
// same numbers as a table.
#pragma once

#include "views/page.h"

class QComboBox;
class QTableView;

namespace rickyard::items {
class DerivedModel;
}

namespace rickyard::views {

class ChartView;
class EmptyState;
class TextLabel;

class ReadingsPanel : public QWidget
{
    Q_OBJECT

public:
    explicit ReadingsPanel(PageContext &context, QWidget *parent = nullptr);
    void refresh();
    bool showTask(domain::RecordId task);
    [[nodiscard]] domain::RecordId task() const;
    [[nodiscard]] QComboBox *chooser() const { return m_tasks; }
    [[nodiscard]] ChartView *chart() const { return m_chart; }
    [[nodiscard]] QTableView *table() const { return m_table; }

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

private:
    void fill();
    void draw(const domain::UpkeepTask &task, const QVector<domain::CheckReading> &readings);
    void list(const domain::UpkeepTask &task, const QVector<domain::CheckReading> &readings);

    PageContext &m_context;
    QComboBox *m_tasks;
    TextLabel *m_summary;
    ChartView *m_chart;
    QTableView *m_table;
    items::DerivedModel *m_model;
    QWidget *m_some;
    EmptyState *m_none;
};

} // namespace rickyard::views
