/**
 * Children that the elements of an Excel task-pane manifest may have, in the order that the schema asks for; "?" marks one that may be missing,
 * "*" one that may come several times. Microsoft, "Office Add-ins manifest" reference and the element pages of the add-in only manifest
 * (OfficeApp, VersionOverrides, Host, ExtensionPoint, Control); the parts that this add-in uses.
 */
export const ORDER: Readonly<Record<string, readonly string[]>> = {
  OfficeApp: [
    ...["Id", "AlternateId?", "Version", "ProviderName", "DefaultLocale", "DisplayName", "Description"],
    ...["IconUrl?", "HighResolutionIconUrl?", "SupportUrl?", "AppDomains?", "Hosts", "Requirements?"],
    ...["DefaultSettings", "Permissions", "VersionOverrides"],
  ],
  AppDomains: ["AppDomain*"],
  "OfficeApp/Hosts": ["Host"],
  "OfficeApp/Hosts/Host": [],
  Requirements: ["Sets"],
  Sets: ["Set*"],
  DefaultSettings: ["SourceLocation"],
  VersionOverrides: ["Description?", "Requirements?", "Hosts", "Resources"],
  Hosts: ["Host"],
  Host: ["Runtimes", "AllFormFactors", "DesktopFormFactor"],
  Runtimes: ["Runtime"],
  AllFormFactors: ["ExtensionPoint"],
  "AllFormFactors/ExtensionPoint": ["Script", "Page", "Metadata", "Namespace"],
  Script: ["SourceLocation"],
  Page: ["SourceLocation"],
  Metadata: ["SourceLocation"],
  DesktopFormFactor: ["GetStarted?", "FunctionFile", "ExtensionPoint"],
  GetStarted: ["Title", "Description", "LearnMoreUrl"],
  "DesktopFormFactor/ExtensionPoint": ["OfficeTab"],
  OfficeTab: ["Group"],
  Group: ["Label", "Icon", "Control*"],
  Icon: ["bt:Image*"],
  Control: ["Label", "Supertip", "Icon", "Action"],
  Supertip: ["Title", "Description"],
  Action: ["SourceLocation?", "FunctionName?"],
  Resources: ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"],
  "bt:Images": ["bt:Image*"],
  "bt:Urls": ["bt:Url*"],
  "bt:ShortStrings": ["bt:String*"],
  "bt:LongStrings": ["bt:String*"],
};

/** Kinds of resource, and in which element each is wanted by a resid. */
export const WANTS: Readonly<Record<string, string>> = {
  Runtime: "bt:Urls",
  SourceLocation: "bt:Urls",
  FunctionFile: "bt:Urls",
  LearnMoreUrl: "bt:Urls",
  "bt:Image": "bt:Images",
  Namespace: "bt:ShortStrings",
  Label: "bt:ShortStrings",
  Title: "bt:ShortStrings",
  Description: "bt:LongStrings",
};

/** Longest text of each kind. */
export const LONGEST: Readonly<Record<string, number>> = {
  "bt:ShortStrings": 125,
  "bt:LongStrings": 250,
  "bt:Urls": 2048,
  "bt:Images": 2048,
  DisplayName: 125,
  Description: 250,
  ProviderName: 125,
};
