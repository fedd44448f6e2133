// A page of the main window, and what every page is given.
#pragma once

#include "models/workspace/answers_service.h"
#include "models/workspace/commands/verbs.h"

#include <QWidget>

class QSettings;

namespace rickyard::views {

// Something that happened by itself, to be said outside the window too.
struct Notice {
    QString title;
    QString text;
    bool sound = false;
    domain::Link link; // where it leads
};

// What pages need of the running program; owned by the main window.
struct PageContext {
    commands::Verbs &verbs;
    workspace::AnswersService &answers;
    QSettings &settings; // columns, splitters, last choices
    // Shows any record on its own page.
    std::function<void(domain::Link)> open;
    // One line at the head of the window: what was done, or what stood in the way.
    std::function<void(const QString &)> say;
    std::function<void(const domain::Problems &)> refuse;
    // To the desktop: a message, and a soft sound where asked for. May be empty.
    std::function<void(const Notice &)> notify = {};

    [[nodiscard]] const domain::Books &books() const { return verbs.books(); }
    [[nodiscard]] bool readOnly() const { return verbs.yard().readOnly(); }
};

class Page : public QWidget
{
    Q_OBJECT

public:
    explicit Page(PageContext &context, QWidget *parent = nullptr)
        : QWidget(parent), m_context(context)
    {
    }
    // Shows one record; false when the page has no such table.
    virtual bool show(domain::Link link) = 0;
    // The primary action of the page (Ctrl+N), and its search field (Ctrl+F).
    virtual void addNew() {}
    virtual void startSearch() {}

protected:
    PageContext &context() { return m_context; }
    [[nodiscard]] const PageContext &context() const { return m_context; }

private:
    PageContext &m_context;
};

} // namespace rickyard::views
