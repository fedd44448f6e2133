// A list of any table: search, sort, columns that are remembered, add and delete; with a form of
// the chosen record beside it. An empty table shows what to do first.
#pragma once

#include "models/items/record_model.h"
#include "models/items/search_proxy.h"
#include "views/page.h"

#include <functional>

class QPushButton;
class QSplitter;
class QStackedWidget;
class QTableView;

namespace rickyard::views {

class EmptyState;
class ListColumns;
class RecordForm;
class SearchField;

class RecordList : public QWidget
{
    Q_OBJECT

public:
    // `emptyText`: what belongs here and what to do first.
    RecordList(PageContext &context, domain::TableId table, const QString &iconName,
               const QString &emptyText, QWidget *parent = nullptr);
    ~RecordList() override;

    [[nodiscard]] items::RecordModel &model() { return *m_model; }
    [[nodiscard]] RecordForm &form() { return *m_form; }
    [[nodiscard]] QTableView &view() { return *m_view; }
    // A widget above the form that follows the chosen record (a chart, a summary).
    void setDetail(QWidget *detail);
    // One that is too tall to stand above the form: it scrolls with the fields.
    void setTallDetail(QWidget *detail);
    // An own button beside "Add".
    void addTool(QWidget *tool);
    // Records come in another way than by the form, which has its own button elsewhere: the list
    // has none, and asks for that way.
    void addedBy(const std::function<void()> &way);
    // Initial order, by field key.
    void sortBy(const QString &fieldKey, Qt::SortOrder order);
    bool show(domain::RecordId id);
    void addNew(const domain::Row &prefilled);
    void addNew();
    void startSearch();
    void deleteChosen();
    [[nodiscard]] domain::RecordId chosen() const;

Q_SIGNALS:
    void chosenChanged(qint64 id);

private:
    void buildList(const QString &iconName, const QString &emptyText);
    void buildDetail();
    void followCount();
    void choose(const QModelIndex &index);
    bool leaveForm();

    PageContext &m_context;
    items::RecordModel *m_model;
    items::SearchProxy *m_proxy;
    QSplitter *m_splitter = nullptr;
    QStackedWidget *m_stack = nullptr;
    QStackedWidget *m_side = nullptr;
    QTableView *m_view = nullptr;
    ListColumns *m_columns = nullptr;
    SearchField *m_search = nullptr;
    EmptyState *m_empty = nullptr;
    RecordForm *m_form = nullptr;
    QWidget *m_detailHolder = nullptr;
    QWidget *m_tools = nullptr;
    QPushButton *m_add = nullptr;
    std::function<void()> m_way;
};

} // namespace rickyard::views
