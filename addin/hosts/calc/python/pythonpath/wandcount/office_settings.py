"""What the office knows of its user."""

import uno


def setting(path, name):
    """A value of the office's registry."""
    context = uno.getComponentContext()
    provider = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.configuration.ConfigurationProvider", context
    )
    node = uno.createUnoStruct("com.sun.star.beans.NamedValue", "nodepath", path)
    access = provider.createInstanceWithArguments(
        "com.sun.star.configuration.ConfigurationAccess", (node,)
    )
    return access.getByName(name)


def user_locale():
    """Language and region such as "en-US"; the user's own choice, else that of the program's words."""
    path = "/org.openoffice.Setup/L10N"
    return setting(path, "ooSetupSystemLocale") or setting(path, "ooLocale") or "en-US"
