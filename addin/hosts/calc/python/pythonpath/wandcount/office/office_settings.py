"""What the office knows of its user."""

import uno

from .context import office_context


def setting(path, name):
    """A value of the office's registry."""
    context = office_context()
    provider = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.configuration.ConfigurationProvider", context
    )
    node = uno.createUnoStruct("com.sun.star.beans.NamedValue", "nodepath", path)
    access = provider.createInstanceWithArguments(
        "com.sun.star.configuration.ConfigurationAccess", (node,)
    )
    return access.getByName(name)


def user_locale():
    """Language and region such as "en-US", as cells show numbers: the user's own choice, else the computer's."""
    chosen = setting("/org.openoffice.Setup/L10N", "ooSetupSystemLocale")
    return chosen or setting("/org.openoffice.System/L10N", "Locale") or "en-US"
